import { randomUUID } from 'node:crypto';
import { insertLinkUser } from '#lib/db/accounts.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { packPlans } from '#lib/db/history-plans.ts';
import { computeRollups, writeRollups } from '#lib/db/rollups.ts';
import { lockSettings } from '#lib/db/settings.ts';
import {
  findBroughtMembers,
  insertBroughtMember,
  insertMissingSupports,
  insertRows,
  readOwnLibrary,
} from '#lib/db/take-in.ts';
import { AppError } from '#lib/errors.ts';
import { libraryToBring } from '#lib/handover/take-in/library-to-bring.ts';
import { type LadderMatch, matchLadders } from '#lib/handover/take-in/match-ladders.ts';
import type { ReadBag } from '#lib/handover/take-in/read-bag.ts';
import {
  type LeftOut,
  type Row,
  rowsToKeep,
  rungsNamed,
  type TableRows,
} from '#lib/handover/take-in/rows-to-keep.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';
import { keepStills } from './keep-stills.ts';

type Given = {
  bag: ReadBag;
  record: PackRecord;
  /** False: a trial, which leaves no file behind. */
  keepsFiles: boolean;
  clientId: string;
  byId: string;
  from: string;
  now: Date;
};
type Kept = { rows: Record<string, number>; ladders: LadderMatch[]; people: string[]; leftOut: LeftOut[] };

/** Every row of a pack, kept under new ids in the open transaction, and read back as the checks will read it. */
export async function keepPack(tx: TeamPg, given: Given): Promise<Kept> {
  const { record, clientId, byId, from, now } = given;
  const ids = new Map<string, string>(record.client.map(({ id }) => [id, clientId]));
  await bringPeople(tx, given, ids);
  const own = await readOwnLibrary(tx);
  const matches = matchLadders(record, own, rungsNamed(record));
  for (const [pack, here] of matches.ids) ids.set(pack, here);
  for (const { table, rows } of libraryToBring({ record, own, matches, ids, from, newId: randomUUID }))
    await insert(tx, table, rows);
  await insertMissingSupports(tx, record.support_profile);
  const { tables, leftOut } = rowsToKeep(record, ids, randomUUID);
  const stills = await keepStills(tx, given, {
    rows: rowsOf(tables, 'question_still'),
    oldIds: new Map([...ids].map(([old, id]) => [id, old])),
  });
  const numbered = await newVersions(tx, rowsOf(tables, 'team_settings'));
  const counts: Record<string, number> = {};
  for (const { table, rows } of tables) {
    const whole =
      table === 'question_still'
        ? stills.rows
        : table === 'team_settings'
          ? numbered
          : rows.map(ownColumns(table, { byId, now, teamId: tx.teamId }));
    await insert(tx, table === 'consent' ? 'consent_elsewhere' : table, whole);
    if (whole.length > 0) counts[table] = whole.length;
  }
  await packPlans(tx, [clientId]);
  const rollups = (await computeRollups(tx, [clientId], null)).get(clientId) ?? [];
  await writeRollups(
    tx,
    rollups.map((rollup) => ({ clientId, ...rollup })),
  );
  await assertReadable(tx, clientId, now);
  return {
    rows: counts,
    ladders: matches.ladders,
    people: record.member.map(({ name }) => name),
    leftOut: [...leftOut, ...stills.leftOut],
  };
}

/** Who wrote what came with the pack: kept by name, as people who were never members here. */
async function bringPeople(
  tx: TeamPg,
  { record, from, now }: Given,
  ids: Map<string, string>,
): Promise<void> {
  const known = await findBroughtMembers(
    tx,
    from,
    record.member.map(({ name }) => name),
  );
  for (const { id, name } of record.member) {
    const earlier = known.get(name);
    known.delete(name); // two people of one name stay two
    ids.set(id, earlier ?? randomUUID());
    if (earlier) continue;
    const userId = randomUUID();
    await insertLinkUser(tx, { id: userId, name, at: now });
    await insertBroughtMember(tx, { id: ids.get(id) ?? '', userId, name, team: from, at: now });
  }
}

function rowsOf(tables: readonly TableRows[], name: string): readonly Row[] {
  return tables.find(({ table }) => table === name)?.rows ?? [];
}

/** Numbers of versions count through the whole team. */
async function newVersions(tx: TeamPg, rows: readonly Row[]): Promise<Row[]> {
  if (rows.length === 0) return [];
  const newest = await lockSettings(tx);
  const inOrder = [...rows].sort((one, other) => Number(one.version) - Number(other.version));
  return inOrder.map((row, at) => ({ ...row, version: newest + 1 + at }));
}

type Here = { teamId: string; byId: string; now: Date };

/** What this team says of a row itself: whose client it is now, that a sending is over, that a film lies elsewhere. */
function ownColumns(table: string, { teamId, byId, now }: Here): (row: Row) => Row {
  switch (table) {
    case 'client':
      return (row) => ({ ...row, coach_id: byId, created_at: now.toISOString() });
    case 'check_in':
      return (row) => ({ ...row, body_hash: 'taken in' });
    case 'clip':
      return (row) => ({ ...row, storage_key: `${teamId}/${String(row.id)}.none`, ...elsewhere(row) });
    default:
      return (row) => row;
  }
}

/** The file of a film stays with the team that had it; what was seen on it comes along. */
function elsewhere({ state }: Row): Row {
  return state === 'refused' ? {} : { state: 'gone', keep_until: null };
}

async function insert(tx: TeamPg, table: string, rows: readonly Row[]): Promise<void> {
  try {
    await insertRows(tx, table, rows);
  } catch (cause) {
    // 22 data, 23 constraints: the rows' fault. Anything else is ours.
    if (!(cause instanceof Error && 'code' in cause && /^2[23]/.test(String(cause.code)))) throw cause;
    throw new AppError(
      'invalid',
      `This pack cannot be taken in: rows of ${table} in record.json do not fit together (${cause.message.replace(/".*?"/g, '').trim()}). Nothing of it was kept.`,
      { fields: { [`record.json ${table}`]: 'do not fit together' }, cause },
    );
  }
}

/** The history as checks and pages read it has to be one that they can read. */
async function assertReadable(tx: TeamPg, clientId: string, now: Date): Promise<void> {
  const asOf = now.toISOString().slice(0, 10);
  const history = (await loadHistories(tx, [clientId], { from: null, asOf })).get(clientId);
  if (!history) throw new Error('a client who was taken in has no history');
  parseHistory(history);
}
