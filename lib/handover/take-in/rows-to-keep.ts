import { boundsOf } from '#lib/checks/thresholds/bounds.ts';
import { isLimitId } from '#lib/checks/thresholds.ts';
import type { PackRecord } from '#lib/schemas/pack-record.ts';

export type Row = Readonly<Record<string, unknown>>;
export type TableRows = { table: string; rows: Row[] };
export type LeftOut = { table: string; rows: number; why: string };
export type RowsToKeep = {
  /** In an order in which each row finds what it points at. */
  tables: TableRows[];
  leftOut: LeftOut[];
};

/** Which table a column points at. The same name means the same everywhere. */
const POINTS_AT: Readonly<Record<string, keyof PackRecord>> = {
  client_id: 'client',
  coach_id: 'member',
  by_id: 'member',
  from_id: 'member',
  to_id: 'member',
  looked_by_id: 'member',
  skill_id: 'skill',
  part_id: 'part',
  ladder_id: 'ladder',
  drill_id: 'drill',
  rung_id: 'rung',
  no_kit_rung_id: 'rung',
  plan_id: 'plan',
  session_id: 'plan_session',
  paired_with_id: 'plan_item',
  check_in_id: 'check_in',
  corrects_id: 'check_in',
  set_id: 'check_in_set',
  question_id: 'question',
  reason_id: 'reason',
  step_id: 'step_taken',
  request_id: 'film_request',
  clip_id: 'clip',
};
const MAY_POINT_AT_NOTHING = new Set([
  'no_kit_rung_id',
  'paired_with_id',
  'corrects_id',
  'set_id',
  'request_id',
  'clip_id',
]);
/** Where these may be empty, they may as well point out of the pack. */
const NULLABLE: Readonly<Record<string, readonly string[]>> = {
  question: ['check_in_id'],
  coach_word: ['check_in_id'],
  seen_mark: ['check_in_id'],
  clip: ['check_in_id', 'looked_by_id'],
  set_verdict: ['check_in_id'],
  step_taken: ['reason_id', 'ladder_id'],
  plan: ['by_id'],
  clinician_word: ['by_id'],
  reason_event: ['by_id'],
  team_settings: ['by_id'],
};

/** Everything of the client, parents before children. Ladders come before, people too. */
export const CLIENT_TABLES = [
  'client',
  'guardian',
  'intake',
  'consent',
  'limit_rule',
  'clinician_word',
  'absence',
  'private_note',
  'goal',
  'standing_change',
  'client_move',
  'team_settings',
  'assessment',
  'start_tests',
  'placement',
  'plan',
  'plan_session',
  'plan_item',
  'check_in',
  'check_in_set',
  'pain_score',
  'danger_sign_told',
  'question',
  'answer',
  'seen_mark',
  'film_request',
  'clip',
  'question_still',
  'set_verdict',
  'coach_word',
  'still_frame',
  'reason',
  'reason_event',
  'verdict',
  'step_taken',
  'step_outcome',
  'reason_outcome',
] as const satisfies readonly (keyof PackRecord)[];

/**
 * The rows of a pack as they are kept: under new ids, pointing at each other and at the team's own ladders as `ids` says.
 * Ids inside of kept JSON are followed too. A row that needs something which the pack does not carry (a period was chosen)
 * is left out and counted. `ids` has to name the client, people, skills, parts, ladders, drills and rungs already, and is
 * filled with the rest. Pure but for `newId`.
 */
export function rowsToKeep(record: PackRecord, ids: Map<string, string>, newId: () => string): RowsToKeep {
  for (const table of CLIENT_TABLES) {
    for (const { id } of record[table] ?? []) if (!ids.has(id)) ids.set(id, newId());
  }
  const leftOut: LeftOut[] = [];
  const there = new Map<string, Set<string>>();
  for (const table of ['member', 'skill', 'part', 'ladder', 'drill', 'rung'] as const)
    there.set(table, new Set(record[table].map(({ id }) => id)));
  const tables = CLIENT_TABLES.map((table): TableRows => {
    const rows: readonly Row[] = record[table] ?? [];
    const whole = keptOf(table, rows, there);
    there.set(table, new Set(whole.map((row) => String(row.id))));
    if (whole.length < rows.length)
      leftOut.push({
        table,
        rows: rows.length - whole.length,
        why: 'what they belong to is not in the pack',
      });
    return { table, rows: whole.map((row) => renamed(table, row, { ids, there })) };
  });
  const settings = tables.find(({ table }) => table === 'team_settings');
  const allowed = settings?.rows.filter(({ values }) => isAllowed(values)) ?? [];
  if (settings && allowed.length < settings.rows.length) {
    leftOut.push({
      table: 'team_settings',
      rows: settings.rows.length - allowed.length,
      why: 'a number in them is outside of what may be set here',
    });
    settings.rows = allowed;
  }
  return { tables, leftOut };
}

type There = ReadonlyMap<string, ReadonlySet<string>>;

/** Rows whose needs are all met; within one table (corrections, pyramids) a missing one is let go instead. */
function keptOf(table: string, rows: readonly Row[], there: There): Row[] {
  return rows.filter((row) =>
    Object.entries(POINTS_AT).every(([column, at]) => {
      const id = row[column];
      if (id === undefined || id === null || isFree(table, column)) return true;
      return there.get(at)?.has(String(id)) === true;
    }),
  );
}

function isFree(table: string, column: string): boolean {
  return MAY_POINT_AT_NOTHING.has(column) || NULLABLE[table]?.includes(column) === true;
}

function renamed(
  table: string,
  row: Row,
  { ids, there }: { ids: ReadonlyMap<string, string>; there: There },
): Row {
  const out: Record<string, unknown> = {};
  for (const [column, value] of Object.entries(row)) {
    const at = POINTS_AT[column];
    if (column === 'id') out[column] = ids.get(String(value));
    else if (at !== undefined) {
      const known = value !== null && there.get(at)?.has(String(value)) === true;
      out[column] = known ? (ids.get(String(value)) ?? null) : null;
    } else out[column] = column === 'subject_key' || isJson(value) ? followed(value, ids) : value;
  }
  // A parent or guardian agreed to the other team: here they are asked anew.
  if (table === 'guardian')
    return { ...out, agreed_at: null, declined_at: null, withdrawn_at: null, text_version: null };
  return table === 'client' ? { ...out, note: row.note ?? '' } : out;
}

function isJson(value: unknown): boolean {
  return typeof value === 'object' && value !== null;
}

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}/gi;

/** Kept JSON with every id of the pack in it renamed, also inside of a longer key. */
function followed(value: unknown, ids: ReadonlyMap<string, string>): unknown {
  if (typeof value === 'string') return value.replace(UUID, (id) => ids.get(id.toLowerCase()) ?? id);
  if (Array.isArray(value)) return value.map((one) => followed(one, ids));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [followed(key, ids) as string, followed(one, ids)]),
  );
}

/** Numbers of a client that a coach of this team could have set as well. */
function isAllowed(values: unknown): boolean {
  if (typeof values !== 'object' || values === null) return false;
  return Object.entries(values).every(([id, value]) => {
    if (!isLimitId(id)) return true;
    const { min, max, kept } = boundsOf(id);
    return kept === undefined && typeof value === 'number' && value >= min && value <= max;
  });
}

/** Ids of rungs that the client's own rows name. */
export function rungsNamed(record: PackRecord): Set<string> {
  const named = [
    ...record.check_in_set.map(({ rung_id }) => rung_id),
    ...record.plan_item.flatMap(({ rung_id, no_kit_rung_id }) => [rung_id, no_kit_rung_id]),
    ...record.placement.map(({ rung_id }) => rung_id),
    ...record.film_request.map(({ rung_id }) => rung_id),
    ...record.start_tests.flatMap(
      ({ aims, tests, placed }) => JSON.stringify([aims, tests, placed]).match(UUID) ?? [],
    ),
    ...record.assessment.flatMap(({ answers }) => JSON.stringify(answers).match(UUID) ?? []),
    ...record.reason.flatMap(({ subject }) => JSON.stringify(subject).match(UUID) ?? []),
  ];
  return new Set(named.flatMap((id) => (id === null ? [] : [id])));
}
