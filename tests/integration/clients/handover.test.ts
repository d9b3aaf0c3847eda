import { createHash, randomUUID } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { buffer } from 'node:stream/consumers';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { beforeAll, expect, test } from 'vitest';
import { POST as postPreview } from '#app/api/clients/[clientId]/handover/preview/route.ts';
import { POST as postPack } from '#app/api/clients/[clientId]/handover/route.ts';
import { packRecordSchema } from '#lib/schemas/pack-record.ts';
import { makePack } from '#lib/usecases/handover/make-pack.ts';
import { openPack } from '#tests/fixtures/open-pack.ts';
import { WHOLE } from '#tests/fixtures/pack-content.ts';
import { readPdf } from '#tests/fixtures/read-pdf.ts';
import { copyLibraryInto, leadOf } from '#tests/integration/clients/support.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { browserRequest, cookieFor } from '#tests/integration/support/signing-in.ts';

const NOW = new Date('2026-11-25T15:00:00.000Z');
let team: TestTeam;
let clientId: string;
let otherId: string;

beforeAll(async () => {
  team = await makeTestTeam();
  ({ clientId } = await makeTestClient(team, { name: '=Łucja 山田', zone: 'Europe/Lisbon' }));
  ({ clientId: otherId } = await makeTestClient(team, { name: 'Somebody Else' }));
  const { both: rungId } = await copyLibraryInto(team);
  for (const [owner, words] of [
    [clientId, 'mine'],
    [otherId, 'of somebody else'],
  ] as const)
    await fill(owner, rungId, words);
});

/** A row in every table that a client's record is made of. */
async function fill(owner: string, rungId: string, words: string): Promise<void> {
  const run = (sql: string, ...values: unknown[]) => ownerQuery(sql, [team.teamId, owner, ...values]);
  const checkInId = randomUUID();
  await run(
    `insert into check_in (team_id, id, client_id, body_hash, date, zone, sent_at, kind, effort, minutes, words)
     values ($1, $3, $2, 'x', '2026-11-23', 'Europe/Lisbon', '2026-11-23T19:00:00Z', 'training', 7, 55, $4)`,
    checkInId,
    words,
  );
  await run(
    `insert into check_in_set (team_id, client_id, check_in_id, rung_id, side, idx, planned, value, how, faults)
     values ($1, $2, $3, $4, 'both', 1, 5, 4.5, 'typed', '{came-off}')`,
    checkInId,
    rungId,
  );
  await run(
    `insert into pain_score (team_id, client_id, check_in_id, region, side, moment, value, kind)
     values ($1, $2, $3, 'elbow-inner', 'right', 'after', 4, 'joint')`,
    checkInId,
  );
  await run(
    `insert into danger_sign_told (team_id, client_id, check_in_id, sign, region, side) values ($1, $2, $3, 'swelling', 'elbow-inner', 'right')`,
    checkInId,
  );
  await run(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date) select $1, $2, ladder_id, id, 'both', '2026-11-01' from rung where team_id = $1 and id = $3`,
    rungId,
  );
  const reason = `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since, step, clears,
      evidence, working, state, rules_version, settings_version, raised_at, updated_at)
     values ($1, $2, 'pain-rising', 'elbow', '{"key":"elbow","label":"elbow"}', 'act', 60, 'today', $3, 'up', '2026-11-20',
      '{"kind":"cut-volume","text":"Cut the pulling"}', 'two calm days', '{}', '{}', 'open', '1', 0, '2026-11-21T04:00:00Z', '2026-11-21T04:00:00Z') returning id`;
  const [made] = await ownerQuery<{ id: string }>(reason, [
    team.teamId,
    owner,
    `Elbow **4** of 10, ${words}.`,
  ]);
  await run(
    `insert into reason_event (team_id, reason_id, at, what, level) select $1, $3, '2026-11-21T04:00:00Z', 'raised', 'act' where $2::uuid is not null`,
    made?.id,
  );
  await run(
    `insert into step_taken (team_id, client_id, reason_id, by_id, kind, words, taken_on) values ($1, $2, $3, $4, 'cut-volume', $5, '2026-11-21')`,
    made?.id,
    team.memberId,
    words,
  );
  await run(
    `insert into question (team_id, client_id, text, asked_at) values ($1, $2, $3, '2026-11-24T10:00:00Z')`,
    `A question, ${words}?`,
  );
  await run(
    `insert into private_note (team_id, client_id, by_id, text, created_at) values ($1, $2, $3, $4, '2026-11-24T08:00:00Z')`,
    team.memberId,
    `A note, ${words}`,
  );
  await run(
    `insert into intake (team_id, client_id, answers) values ($1, $2, $3)`,
    JSON.stringify({ kit: `rings, ${words}` }),
  );
  await run(
    `insert into limit_rule (team_id, client_id, region, side, rule, from_date, who, words) values ($1, $2, 'elbow-inner', 'right', 'none', '2026-11-24', 'physiotherapist', $3)`,
    words,
  );
}

const options = { ...WHOLE, words: { ...WHOLE.words, why: 'What load?', forWhom: 'physiotherapist' } };
const packOf = async (over: Partial<typeof options> = {}) => {
  const made = await makePack(leadOf(team), { clientId, options: { ...options, ...over } }, NOW);
  const zip = await buffer(made.zip);
  return { made, zip, pack: await openPack(zip) };
};

test('the record leaves whole with its ids, by its schema, and nothing of anybody else', async () => {
  const { made, zip, pack } = await packOf();
  expect(zip.length).toBe(made.bytes);
  const record = JSON.parse(pack.text('data/record.json'));
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  const validate = ajv.compile(JSON.parse(pack.text('data/record.schema.json')));
  expect(validate(record), JSON.stringify(validate.errors?.slice(0, 5))).toBe(true);
  expect(packRecordSchema.safeParse(record).success).toBe(true);
  for (const name of [
    'check_in',
    'check_in_set',
    'pain_score',
    'danger_sign_told',
    'placement',
    'reason',
    'reason_event',
    'step_taken',
    'question',
    'intake',
    'limit_rule',
  ])
    expect(record[name], name).toHaveLength(1);
  expect(record.client).toMatchObject([{ id: clientId, name: '=Łucja 山田' }]);
  expect(record.member).toMatchObject([{ id: team.memberId }]);
  expect(record.ladder.length).toBeGreaterThan(0);
  expect(record.rung.map((one: { id: string }) => one.id)).toContain(record.check_in_set[0].rung_id);
  const whole = pack.names.map((name) => pack.bytes(name).toString('utf8')).join('\n');
  expect(whole).not.toContain('somebody else');
  expect(whole).not.toContain(otherId);
  expect(whole).not.toContain(team.teamId);
  expect(whole).not.toMatch(/A note, mine|body_hash|storage_key/);
  expect(pack.rows('told_at_the_start')).toMatchObject([{ about: 'kit', told: 'rings, mine' }]);
  const pdf = await readPdf(pack.bytes('data/report.pdf'));
  expect(pdf.pages[0]).toContain('=Łucja 山田');
  expect(pdf.pages[0]).toContain('Limit: Nothing for the right elbow, inner');
});

test('private notes come along only when they are ticked', async () => {
  const { pack } = await packOf({ parts: [...WHOLE.parts, 'notes'] });
  expect(JSON.parse(pack.text('data/record.json')).private_note).toMatchObject([{ text: 'A note, mine' }]);
  expect(pack.rows('private_notes')).toMatchObject([{ words: 'A note, mine' }]);
});

test('every column that is kept is in the schema of record.json, or is named as staying here', async () => {
  const stays = new Set([
    ...['team_id', 'user_id', 'body_hash', 'storage_key', 'log_import_id', 'brought_from'],
    ...['upload_length', 'upload_offset', 'piece_at', 'writing_until', 'packed'],
  ]);
  const columns = await ownerQuery<{ table: string; column: string }>(
    `select table_name as table, column_name as column from information_schema.columns where table_schema = 'public'`,
  );
  const missing = Object.entries(packRecordSchema.shape).flatMap(([table, schema]) => {
    if (table === 'formatVersion' || table === 'period' || table === 'member') return [];
    const given = 'removeDefault' in schema ? schema.removeDefault() : schema;
    const list = 'unwrap' in given && table === 'private_note' ? given.unwrap() : given;
    const known = Object.keys((list as unknown as { element: { shape: object } }).element.shape);
    return columns
      .filter((one) => one.table === table && !stays.has(one.column) && !known.includes(one.column))
      .map((one) => `${one.table}.${one.column}`);
  });
  expect(missing, 'add these to lib/schemas/record-*.ts').toEqual([]);
});

test('a pack is on record with the sum of its bytes, once it is whole; one line in the audit', async () => {
  const before = await ownerQuery<{ n: number }>(
    'select count(*)::int as n from handover_pack where client_id = $1',
    [clientId],
  );
  const { zip } = await packOf();
  const packs = await ownerQuery<{ id: string; why: string; sha256: string }>(
    'select id, why, sha256 from handover_pack where client_id = $1 order by created_at desc',
    [clientId],
  );
  expect(packs).toHaveLength((before[0]?.n ?? 0) + 1);
  expect(packs[0]).toMatchObject({
    why: 'What load?',
    sha256: createHash('sha256').update(zip).digest('hex'),
  });
  const audit = await ownerQuery(`select action, fields from audit where object_id = $1`, [packs[0]?.id]);
  expect(audit).toEqual([{ action: 'client-exported', fields: [...WHOLE.parts] }]);
});

test('two at once are both right, and nothing is left on the disk', async () => {
  const left = () => readdirSync(tmpdir()).filter((name) => /^plumbline-[0-9a-f-]{36}$/.test(name)).length;
  const before = left();
  const both = await Promise.all([packOf(), packOf({ paper: 'Letter' })]);
  for (const { pack } of both) expect(pack.rows('sets')).toHaveLength(1);
  expect(both[0].pack.text('data/record.json')).toBe(both[1].pack.text('data/record.json'));
  expect(left()).toBeLessThanOrEqual(before);
});

test("somebody else's client is not there; a broken form is refused by its field; a preview keeps nothing", async () => {
  const cookie = await cookieFor(team.userId);
  const ask = (post: typeof postPack, id: string, body: unknown) =>
    post(browserRequest(`/api/clients/${id}/handover`, { cookie, json: body }), {
      params: Promise.resolve({ clientId: id }),
    });
  const elsewhere = await makeTestClient(await makeTestTeam('Other'));
  expect((await ask(postPack, elsewhere.clientId, {})).status).toBe(404);
  const refused = await ask(postPack, clientId, {
    from: '2026-11-20',
    to: '2026-11-02',
    parts: ['everything'],
    paper: 'A5',
  });
  expect(refused.status).toBe(400);
  expect(Object.keys((await refused.json()).error.fields).sort()).toEqual(['paper', 'parts.0']);
  const backwards = await ask(postPack, clientId, { from: '2026-11-20', to: '2026-11-02' });
  expect((await backwards.json()).error.fields).toEqual({
    to: 'the last day is before the first: change one of them',
  });
  const packs = await ownerQuery('select 1 from handover_pack where client_id = $1', [clientId]);
  const preview = await ask(postPreview, clientId, { summary: 'Calm; \u0007careful' });
  expect(preview.status).toBe(200);
  expect(await preview.json()).toMatchObject({ name: '=Łucja 山田', mayShare: expect.any(Boolean), sets: 1 });
  expect(await ownerQuery('select 1 from handover_pack where client_id = $1', [clientId])).toHaveLength(
    packs.length,
  );
  const given = await ask(postPack, clientId, { parts: 'tables' });
  expect(given.headers.get('content-disposition')).toMatch(
    /filename="handover-[0-9a-f]{8}-\d{4}-\d{2}-\d{2}\.zip"/,
  );
  expect((await given.arrayBuffer()).byteLength).toBe(Number(given.headers.get('content-length')));
});
