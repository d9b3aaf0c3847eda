import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { expect, test } from 'vitest';
import { AppError } from '#lib/errors.ts';
import { historyJsonSchema } from '#lib/handover/history-json-schema.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import { RUNG, sampleCheckIn, sampleHistory } from '#tests/fixtures/sample-history.ts';

const published: Record<string, unknown> = JSON.parse(
  readFileSync('lib/handover/history.schema.json', 'utf8'),
);

function validator() {
  const ajv = new Ajv2020({ strict: true, strictTypes: false, allErrors: true });
  addFormats.default(ajv);
  return ajv.compile(published);
}

function problemsOf(value: unknown): Record<string, string> {
  try {
    parseHistory(value);
  } catch (error) {
    if (error instanceof AppError) return error.fields;
    throw error;
  }
  return {};
}

test('a full history passes and comes back unchanged', () => {
  expect(parseHistory(JSON.parse(JSON.stringify(sampleHistory())))).toEqual(sampleHistory());
});

test('the published JSON Schema is the one made from the code', () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(historyJsonSchema())));
});

test('the published schema takes the sample and refuses what the parser refuses', () => {
  const validate = validator();
  expect(validate(sampleHistory()), JSON.stringify(validate.errors)).toBe(true);
  const pain = { region: 'knee', side: 'left', moment: 'after', value: 11, kind: 'joint', usual: null };
  expect(
    validate({
      ...sampleHistory(),
      checkIns: [{ ...sampleCheckIn({ id: 'x', date: '2026-03-02' }), pain: [pain] }],
    }),
  ).toBe(false);
  expect(validate({ ...sampleHistory(), extra: 1 })).toBe(false);
  expect(validate({ ...sampleHistory(), seen: ['yesterday'] })).toBe(false);
});

const inCheckIn = (over: object) => ({
  ...sampleHistory(),
  checkIns: [{ ...sampleCheckIn({ id: 'x', date: '2026-03-02' }), ...over }],
});

test.each([
  ['a date that does not exist', inCheckIn({ date: '2027-02-30' }), 'checkIns.0.date'],
  ['an instant without zone', inCheckIn({ sentAt: '2026-03-02T10:00:00' }), 'checkIns.0.sentAt'],
  ['effort as text', inCheckIn({ effort: '6' }), 'checkIns.0.effort'],
  ['half a point of effort', inCheckIn({ effort: 6.5 }), 'checkIns.0.effort'],
  ['minutes over a day', inCheckIn({ minutes: 1441 }), 'checkIns.0.minutes'],
  ['an unknown zone', inCheckIn({ zone: 'Mars/Base' }), 'checkIns.0.zone'],
  [
    'an unknown rung',
    inCheckIn({ sets: [{ ...sampleCheckIn({ id: 'x', date: '2026-03-02' }).sets[0], rungId: 'none' }] }),
    'checkIns.0.sets.0.rungId',
  ],
  [
    'a weight over 1',
    { ...sampleHistory(), rungs: [{ ...RUNG, weights: { neck: 1.2 } }] },
    'rungs.0.weights.neck',
  ],
  ['an unknown version', { ...sampleHistory(), formatVersion: 2 }, 'formatVersion'],
  ['not an object', null, '(the whole file)'],
])('%s is refused by its path', (_name, value, path) => {
  expect(Object.keys(problemsOf(value))).toEqual([path]);
});

test('an unknown field is refused by its name', () => {
  expect(
    problemsOf({
      ...sampleHistory(),
      checkIns: [{ ...sampleCheckIn({ id: 'x', date: '2026-03-02' }), mood: 'ok' }],
    }),
  ).toEqual({
    'checkIns.0': expect.stringContaining('mood'),
  });
});
