import { createHash, randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { PassThrough, Writable } from 'node:stream';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import ICAL from 'ical.js';
import { beforeAll, expect, test } from 'vitest';
import { writeBag } from '#lib/handover/bag.ts';
import { planAsCalendar } from '#lib/handover/calendar.ts';
import { readHistory } from '#lib/handover/read-history.ts';
import { writePack } from '#lib/handover/write-pack.ts';
import { type Opened, packOf } from '#tests/fixtures/open-pack.ts';
import { MADE, WHOLE } from '#tests/fixtures/pack-content.ts';
import { sampleHistory } from '#tests/fixtures/sample-history.ts';
import { demoContent } from './demo-pack.ts';

let pack: Opened;
beforeAll(async () => {
  pack = await packOf(demoContent(), WHOLE);
}, 60_000);

/** Names the files whose sum is not the one that the manifest says. */
function changedFiles(opened: Opened): string[] {
  return ['manifest-sha256.txt', 'tagmanifest-sha256.txt'].flatMap((manifest) =>
    opened
      .text(manifest)
      .trimEnd()
      .split('\n')
      .flatMap((line) => {
        const [sum = '', name = ''] = line.split('  ');
        return createHash('sha256').update(opened.bytes(name)).digest('hex') === sum ? [] : [name];
      }),
  );
}

test('a bag of RFC 8493: every file of data is in the manifest, every sum is right, sizes are said', () => {
  expect(pack.text('bagit.txt')).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
  const listed = pack
    .text('manifest-sha256.txt')
    .trimEnd()
    .split('\n')
    .map((line) => line.split('  ')[1]);
  const inData = pack.names.filter((name) => name.startsWith('data/'));
  expect(listed.sort()).toEqual(inData.sort());
  expect(changedFiles(pack)).toEqual([]);
  const bytes = inData.reduce((sum, name) => sum + pack.bytes(name).length, 0);
  expect(pack.text('bag-info.txt')).toContain(`Payload-Oxum: ${bytes}.${inData.length}\n`);
  expect(pack.names.filter((name) => !name.startsWith('data/')).sort()).toEqual([
    'bag-info.txt',
    'bagit.txt',
    'manifest-sha256.txt',
    'tagmanifest-sha256.txt',
  ]);
});

test('one changed byte is found and named', () => {
  const spoiled = Buffer.from(pack.bytes('data/tables/pain.csv'));
  spoiled[spoiled.length - 3] = (spoiled[spoiled.length - 3] ?? 0) ^ 1;
  const bytes = (name: string) => (name === 'data/tables/pain.csv' ? spoiled : pack.bytes(name));
  expect(changedFiles({ ...pack, bytes })).toEqual(['data/tables/pain.csv']);
});

test('history.json is the one that check-history reads, and fits its schema', () => {
  const text = pack.text('data/history.json');
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  const schema = JSON.parse(pack.text('data/history.schema.json'));
  expect(schema).toEqual(JSON.parse(readFileSync('lib/handover/history.schema.json', 'utf8')));
  const validate = ajv.compile(schema);
  expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
  const { checkIns, rungs } = readHistory(Buffer.from(text), 'history.json');
  const told = demoContent().history;
  expect([checkIns.length, rungs.length]).toEqual([told.checkIns.length, told.rungs.length]);
});

test('the plan as a calendar: read by a parser, short lines, CRLF, titles without health, the same ids again', () => {
  const text = pack.text('data/plan.ics');
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
  expect(events.length).toBeGreaterThan(4);
  for (const event of events) {
    expect(event.getFirstPropertyValue('summary')).toMatch(/^Training \w+$/);
    expect(String(event.getFirstPropertyValue('dtstart'))).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  }
  for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  const uids = (of: string) => [...of.matchAll(/^UID:(.*)$/gm)].map(([, uid]) => uid);
  expect(new Set(uids(text)).size).toBe(events.length);
  const about = { today: '2026-11-27', made: new Date('2026-11-27T15:00:00.000Z') };
  const again = planAsCalendar(demoContent().history, about);
  const shared = uids(again).filter((uid) => uids(text).includes(uid));
  expect(shared.length).toBeGreaterThan(uids(again).length / 2);
});

test('a word with every sign of iCalendar comes back as it was', () => {
  const history = sampleHistory();
  const [rung] = history.rungs;
  if (!rung) throw new Error('no rung');
  const name = `a;b,c\\d ${'ŁŻ漢字🤸'.repeat(12)}`;
  const plans = history.plans.map((plan) => ({ ...plan, until: null }));
  const text = planAsCalendar(
    { ...history, plans, rungs: [{ ...rung, name }] },
    { today: '2026-03-04', made: MADE },
  );
  const [event] = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
  expect(String(event?.getFirstPropertyValue('description'))).toContain(name);
});

test('pain for clinical systems: one observation a score, LOINC 72514-3 as a whole number, side in words', () => {
  const bundle = JSON.parse(pack.text('data/fhir-bundle.json'));
  expect(bundle).toMatchObject({ resourceType: 'Bundle', type: 'collection' });
  const observations = bundle.entry
    .slice(1)
    .map((one: { resource: Record<string, unknown> }) => one.resource);
  const scores = pack.rows('pain');
  expect(observations).toHaveLength(scores.length);
  expect(observations.map((one: { valueInteger: number }) => one.valueInteger)).toEqual(
    scores.map((row) => Number(row.pain_0_10)),
  );
  expect(observations[0]).toMatchObject({
    resourceType: 'Observation',
    status: 'final',
    code: { coding: [{ system: 'http://loinc.org', code: '72514-3' }] },
    subject: { reference: `urn:uuid:${demoContent().history.client.id}` },
  });
  expect(JSON.stringify(observations)).toContain('right elbow, inner');
});

test('private notes stay out unless they are ticked; a picture that is gone is left out', async () => {
  const whole = [...pack.names.map((name) => pack.bytes(name).toString('utf8'))].join('\n');
  expect(whole).not.toContain('exams in June');
  expect(pack.text('data/stills/s-1.jpg')).toBe('picture s-1');
  expect(pack.names).not.toContain('data/stills/gone.jpg');
  const ticked = await packOf(demoContent(), { ...WHOLE, parts: [...WHOLE.parts, 'notes'] });
  expect(ticked.rows('private_notes')).toMatchObject([{ words: 'Only for coaches: exams in June.' }]);
});

test('only what is chosen: the report always comes, the rest by part; a period leaves out what lies outside', async () => {
  const small = await packOf(demoContent(), { ...WHOLE, parts: [] });
  expect(small.names.filter((name) => name.startsWith('data/')).sort()).toEqual([
    'data/README.txt',
    'data/consent.txt',
    'data/report.html',
    'data/report.pdf',
  ]);
  const period = { from: '2026-09-01', to: '2026-09-30' };
  const september = await packOf(demoContent(), { ...WHOLE, period });
  const dates = ['check_ins', 'sets', 'pain', 'load_by_day'].flatMap((name) =>
    september.rows(name).map((row) => row.date ?? ''),
  );
  expect(dates.length).toBeGreaterThan(100);
  expect(dates.filter((date) => date < period.from || date > period.to)).toEqual([]);
  const history = JSON.parse(september.text('data/history.json'));
  expect(history.checkIns.every((one: { date: string }) => one.date.startsWith('2026-09'))).toBe(true);
  expect(september.text('data/report.html')).toContain('1 Sep 2026 to 30 Sep 2026');
});

test('what breaks breaks the whole pack: nobody gets half of one that looks whole', async () => {
  const content = demoContent();
  const torn = {
    ...content,
    record: {
      ...content.record,
      pain: async function* () {
        yield [];
        throw new Error('the disk is gone');
      },
    },
  };
  const out = new PassThrough().resume();
  await expect(writePack(torn, WHOLE, out)).rejects.toThrow('the disk is gone');
  expect(out.destroyed).toBe(true);
  const nobody = new Writable({ write: (_chunk, _encoding, done) => done(new Error('hung up')) });
  await expect(writePack(content, WHOLE, nobody)).rejects.toThrow('hung up');
});

test('a bag is written while it is made: a slow reader holds the source back', async () => {
  let made = 0;
  const pieces = function* () {
    for (; made < 4_000; made += 1) yield randomBytes(8_192); // what cannot be packed smaller fills every buffer
  };
  const out = new PassThrough({ highWaterMark: 1024 });
  const done = writeBag([{ path: 'big.txt', pieces }], { made: new Date(), facts: [] }, out);
  await new Promise((tick) => setTimeout(tick, 300));
  expect(made).toBeLessThan(400);
  out.resume();
  expect(await done).toMatchObject({ files: 1 });
  expect(made).toBe(4_000);
});
