import { PassThrough } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { ZipArchive } from 'archiver';
import { beforeAll, describe, expect, it } from 'vitest';
import { POST as takeIn } from '#app/api/clients/take-in/route.ts';
import { writeBag } from '#lib/handover/bag.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';
import { openPack } from '#tests/fixtures/open-pack.ts';
import { ownerQuery } from '../support/database.ts';
import { browserRequest, cookieFor, noParams, ORIGIN } from '../support/signing-in.ts';
import { leadOf } from '../team/arrange.ts';
import { aFullClient, anotherTeam, packOfClient } from './arrange.ts';

type Files = Map<string, Buffer>;
let pack: Buffer;
let files: Files;
let record: PackRecord;
let cookie: string;
let teamId: string;
let before: number;
beforeAll(async () => {
  const phone = await aFullClient('Bahar Oz');
  pack = await packOfClient(leadOf(phone.team), phone.clientId);
  const opened = await openPack(pack);
  files = new Map(opened.names.map((name) => [name, opened.bytes(name)]));
  record = JSON.parse(opened.text('data/record.json'));
  const { team } = await anotherTeam();
  teamId = team.teamId;
  cookie = await cookieFor(team.userId);
  before = await rowsHere();
});

/** A zip of these files, as any program could make it. */
async function zipOf(all: Files, options: { symlink?: string } = {}): Promise<Buffer> {
  const zip = new ZipArchive({ zlib: { level: 9 } });
  const out = new PassThrough();
  zip.pipe(out);
  for (const [name, bytes] of all) zip.append(bytes, { name });
  if (options.symlink) zip.symlink(options.symlink, '/etc/passwd');
  const [bytes] = await Promise.all([buffer(out), zip.finalize()]);
  return bytes;
}

/** A whole pack, its sums right, with another record.json. */
async function packWith(text: string): Promise<Buffer> {
  const out = new PassThrough();
  const bag = writeBag(
    [{ path: 'record.json', pieces: () => [text] }],
    { made: new Date('2026-11-26T12:00:00Z'), facts: [['Source-Organization', 'Elsewhere']] },
    out,
  );
  const [bytes] = await Promise.all([buffer(out), bag]);
  return bytes;
}
const recordWith = (changes: object) => packWith(JSON.stringify({ ...record, ...changes }));
const without = (name: string): Files => new Map([...files].filter(([path]) => path !== name));
const withFile = (name: string, bytes: Buffer = Buffer.from('x')): Files =>
  new Map([...files, [name, bytes]]);

async function send(bytes: Uint8Array, headers: Record<string, string> = {}) {
  const { headers: own } = browserRequest('/x', { method: 'POST', cookie, headers });
  const request = new Request(`${ORIGIN}/api/clients/take-in`, {
    method: 'POST',
    headers: own,
    body: Buffer.from(bytes),
  });
  const answer = await takeIn(request, noParams);
  return { status: answer.status, text: await answer.text() };
}
const rowsHere = async () => {
  const [row] = await ownerQuery<{ n: number }>(
    `select (select count(*) from client where team_id = $1) + (select count(*) from member where team_id = $1)
       + (select count(*) from ladder where team_id = $1) + (select count(*) from audit where team_id = $1)
       + (select count(*) from taken_in where team_id = $1) as n`,
    [teamId],
  );
  return Number(row?.n);
};

/** Changes one byte of the packed bytes of a file inside the zip, somewhere in its middle. */
function flipped(zip: Buffer, name: string): Buffer {
  const out = Buffer.from(zip);
  const at = out.indexOf(Buffer.from(name)) + name.length + 200;
  out[at] = (out[at] ?? 0) ^ 1;
  return out;
}

/** The list at the end of the zip says of a file that it is as long as this. */
function lying(zip: Buffer, name: string, length: number): Buffer {
  const out = Buffer.from(zip);
  const at = out.lastIndexOf(Buffer.from(name)) - 46;
  expect(out.readUInt32LE(at)).toBe(0x02014b50);
  out.writeUInt32LE(length, at + 24);
  return out;
}

const BAD: [what: string, make: () => Buffer | Promise<Buffer>, status: number, says: RegExp][] = [
  ['nothing at all', () => Buffer.alloc(0), 400, /is no zip/],
  ['a text', () => Buffer.from('name;email\nAda;ada@example.org\n'), 400, /is no zip/],
  [
    'a zip of something else',
    () => zipOf(new Map([['holiday.txt', Buffer.from('sun')]])),
    400,
    /no bagit\.txt/,
  ],
  ['a pack that was cut off', () => pack.subarray(0, pack.length - 200), 400, /cut off|damaged/],
  [
    'a pack with one changed byte',
    () => flipped(pack, 'data/record.json'),
    400,
    /data\/record\.json.*damaged/,
  ],
  [
    'a pack with one changed letter, zipped anew',
    () => zipOf(withFile('data/consent.txt', Buffer.from('No consent was given.'))),
    400,
    /data\/consent\.txt.*not as it was made/,
  ],
  [
    'a manifest that was changed as well',
    () =>
      zipOf(
        withFile(
          'manifest-sha256.txt',
          Buffer.from(String(files.get('manifest-sha256.txt')).replace(/[0-9a-f]/, 'f')),
        ),
      ),
    400,
    /manifest-sha256\.txt.*not as it was made/,
  ],
  [
    'a pack without one of its files',
    () => zipOf(without('data/README.txt')),
    400,
    /data\/README\.txt.*missing/,
  ],
  [
    'a pack with one file more',
    () => zipOf(withFile('data/more.txt')),
    400,
    /data\/more\.txt.*does not name/,
  ],
  [
    'another version of the layout',
    () =>
      zipOf(withFile('bagit.txt', Buffer.from('BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n'))),
    400,
    /version that is not read/,
  ],
  ['another version of the record', () => recordWith({ formatVersion: 2 }), 400, /formatVersion: must be 1/],
  ['no record in it', () => zipOf(without('data/record.json')), 400, /record\.json.*missing/],
  [
    'a bomb',
    () => zipOf(new Map([['data/zeros', Buffer.alloc(81 * 1024 * 1024)]])),
    413,
    /longer than 80 MB/,
  ],
  [
    'a bomb that lies about its length',
    async () =>
      lying(await zipOf(new Map([['data/zeros', Buffer.alloc(81 * 1024 * 1024)]])), 'data/zeros', 10),
    400,
    /data\/zeros.*damaged/,
  ],
  ['a zip in the zip', () => zipOf(withFile('data/inner.zip', pack)), 400, /packed file inside/],
  [
    'more than 100 files',
    () => zipOf(new Map(Array.from({ length: 101 }, (_, i) => [`data/${i}`, Buffer.from('x')]))),
    413,
    /101 files, at most 100/,
  ],
  ['a link to another place', () => zipOf(files, { symlink: 'data/link' }), 400, /a link to another place/],
  [
    'a path that leads out',
    async () => replaced(await zipOf(withFile('data/aa/escape')), 'data/aa/escape', 'data/../../out'),
    400,
    /leads out of the pack/,
  ],
  ['JSON that is none', () => packWith('{"client": ['), 400, /not JSON/],
  [
    'keys that reach into objects',
    () =>
      packWith(
        JSON.stringify(record).replace('{"formatVersion"', '{"__proto__":{"isLead":true},"formatVersion"'),
      ),
    400,
    /__proto__/,
  ],
  [
    'the same deep inside',
    () =>
      packWith(JSON.stringify(record).replace('"evidence":{', '"evidence":{"constructor":{"prototype":1},')),
    400,
    /constructor/,
  ],
  [
    'JSON 10,000 levels deep',
    () => packWith(`${'['.repeat(10_000)}${']'.repeat(10_000)}`),
    400,
    /nested deeper/,
  ],
  [
    "somebody else's team",
    () => recordWith({ client: [{ ...record.client[0], team_id: crypto.randomUUID() }] }),
    400,
    /client\.0/,
  ],
  [
    "a user's sign-in",
    () => recordWith({ client: [{ ...record.client[0], user_id: crypto.randomUUID() }] }),
    400,
    /client\.0/,
  ],
  [
    'two clients',
    () => recordWith({ client: [record.client[0], record.client[0]] }),
    400,
    /must be one client/,
  ],
  ['no client', () => recordWith({ client: [] }), 400, /must be one client/],
  [
    'a pain of 11',
    () => recordWith({ pain_score: record.pain_score.map((row) => ({ ...row, value: 11 })) }),
    400,
    /pain_score\.0\.value/,
  ],
  [
    'a region nobody has',
    () => recordWith({ pain_score: record.pain_score.map((row) => ({ ...row, region: 'tail' })) }),
    400,
    /pain_score\.0\.region/,
  ],
  [
    'a date that does not exist',
    () => recordWith({ check_in: record.check_in.map((row) => ({ ...row, date: '2027-02-30' })) }),
    400,
    /check_in\.0\.date/,
  ],
  [
    'a zone nobody has',
    () => recordWith({ client: [{ ...record.client[0], zone: 'Mars/Olympus' }] }),
    400,
    /client\.0\.zone/,
  ],
  [
    'a null byte',
    () => packWith(JSON.stringify(record).replace('seeded-words', 'seeded\\u0000words')),
    400,
    /null byte/,
  ],
  [
    'half a character',
    () => packWith(JSON.stringify(record).replace('seeded-words', 'seeded\\ud800words')),
    400,
    /half of a character/,
  ],
  [
    'the same row twice',
    () => recordWith({ check_in: [...record.check_in, record.check_in[0]] }),
    400,
    /check_in in record\.json do not fit/,
  ],
];

/** Another name of the same length, wherever it stands in the zip. */
function replaced(zip: Buffer, name: string, by: string): Buffer {
  const out = Buffer.from(zip);
  expect(by).toHaveLength(name.length);
  for (let at = out.indexOf(name); at >= 0; at = out.indexOf(name, at + 1)) out.write(by, at, 'latin1');
  return out;
}

describe('a pack that cannot be taken in', () => {
  it('has a twin that can: the same way through, with nothing changed', async () => {
    expect(await send(pack)).toMatchObject({ status: 200 });
    expect(await send(await zipOf(files))).toMatchObject({ status: 200 });
    expect(await send(await packWith(JSON.stringify(record)))).toMatchObject({ status: 200 });
    expect(await rowsHere()).toBe(before);
  });

  it.each(BAD)('%s', async (_what, make, status, says) => {
    const answer = await send(await make());
    expect(answer.text).toMatch(says);
    expect(answer.status).toBe(status);
  });

  it('left nothing behind, none of them', async () => {
    expect(await rowsHere()).toBe(before);
  });

  it('is refused by its length before it is read', async () => {
    const answer = await send(Buffer.from('x'), { 'content-length': String(41 * 1024 * 1024) });
    expect(answer.status).toBe(413);
  });

  it('is not taken with the sum of another one', async () => {
    const { headers } = browserRequest('/x', { method: 'POST', cookie });
    const url = `${ORIGIN}/api/clients/take-in?seen=${'0'.repeat(64)}`;
    const answer = await takeIn(
      new Request(url, { method: 'POST', headers, body: Buffer.from(pack) }),
      noParams,
    );
    expect(answer.status).toBe(409);
    expect(await answer.text()).toContain('another pack than the one you looked at');
  });

  it('drops numbers of the checks that a coach here could not have set', async () => {
    const [row] = record.team_settings;
    const loose = [{ ...row, values: { 'painHigh.from': 10 } }];
    const { status, text } = await send(await recordWith({ team_settings: loose }));
    expect(status).toBe(200);
    expect(JSON.parse(text).leftOut).toContainEqual({
      table: 'team_settings',
      rows: 1,
      why: expect.stringContaining('outside'),
    });
  });
});
