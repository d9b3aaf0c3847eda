import type { Batches } from '#lib/domain/record.ts';
import type { TeamPg } from './client.ts';
import { readInBatches } from './read-in-batches.ts';

/** Every row that is kept about a client, by table; `rows` are good as long as the transaction is open. */
export type RecordRows = { name: string; rows: Batches<unknown> };
type Asked = { clientId: string; from: string | null; to: string; notes: boolean };

// $1 the team, $2 the client. What signs somebody in, where files lie, the team's id, how a row came here and what other
// rows say as well stay here.
const OWN = (table: string, where: string) =>
  `select to_jsonb(x) - '{team_id,user_id,body_hash,storage_key,log_import_id,brought_from,upload_length,upload_offset,piece_at,writing_until,packed}'::text[] as row from ${table} x where x.team_id = $1 and ${where}`;
const MINE = 'x.client_id = $2';
const within = (child: string, parent: string, key: string, own = 'p.client_id = $2') =>
  OWN(child, `exists (select from ${parent} p where p.team_id = x.team_id and p.id = x.${key} and ${own})`);
/** The client's own date at an instant. */
const dated = (column: string) =>
  `wall_clock((select zone from client where team_id = $1 and id = $2), ${column})::date`;

/** What is about a clip goes where the clip goes. */
const FILMED_ON = '(select filmed_on from clip k where k.team_id = x.team_id and k.id = x.clip_id)';

type Source = { name: string; sql: string; first?: string; last?: string; order?: string };

// One set of ids, not one alternative after another: those are asked again for every row where the planner guesses wrong.
const LADDERS = `select l.id from ladder l where l.team_id = $1 and l.id in (
  select r.ladder_id from rung r where r.team_id = $1 and r.id in (
    select rung_id from check_in_set where team_id = $1 and client_id = $2
    union select unnest(array[i.rung_id, i.no_kit_rung_id]) from plan_item i
      join plan_session s on s.team_id = i.team_id and s.id = i.session_id
      join plan p on p.team_id = s.team_id and p.id = s.plan_id where i.team_id = $1 and p.client_id = $2
    union select rung_id from placement where team_id = $1 and client_id = $2
    union select rung_id from film_request where team_id = $1 and client_id = $2
    union select rung_id from clip where team_id = $1 and client_id = $2)
  union select (t->>'ladderId')::uuid from start_tests a cross join jsonb_array_elements(a.tests) t
    where a.team_id = $1 and a.client_id = $2
  union select (part->>'ladderId')::uuid from assessment a cross join jsonb_array_elements(a.answers->'parts') part
    where a.team_id = $1 and a.client_id = $2)`;
const PARTS = `select p.id from part p where p.team_id = $1 and p.id in (select part_id from ladder where team_id = $1 and id in (${LADDERS}))`;
const NAMED = [
  'plan',
  'coach_word',
  'seen_mark',
  'film_request',
  'assessment',
  'start_tests',
  'step_taken',
  'clinician_word',
  'standing_change',
  'client_move',
]
  .map((table) => `select by_id from ${table} where team_id = $1 and client_id = $2`)
  .concat(
    'select coach_id from client where team_id = $1 and id = $2',
    'select from_id from client_move where team_id = $1 and client_id = $2',
    'select to_id from client_move where team_id = $1 and client_id = $2',
    'select a.by_id from answer a join question q on q.team_id = a.team_id and q.id = a.question_id where a.team_id = $1 and q.client_id = $2',
    'select e.by_id from reason_event e join reason r on r.team_id = e.team_id and r.id = e.reason_id where e.team_id = $1 and r.client_id = $2',
    'select v.by_id from verdict v join reason r on r.team_id = v.team_id and r.id = v.reason_id where v.team_id = $1 and r.client_id = $2',
    'select by_id from team_settings where team_id = $1 and client_id = $2',
    'select looked_by_id from clip where team_id = $1 and client_id = $2',
    'select by_id from set_verdict where team_id = $1 and client_id = $2',
    'select by_id from private_note where team_id = $1 and client_id = $2',
  )
  .join(' union ');

const ofCheckIn = (table: string) => within(table, 'check_in', 'check_in_id');
const ofReason = (table: string) => within(table, 'reason', 'reason_id');
const ofPlan = within('plan_session', 'plan', 'plan_id');
const ofSession = OWN(
  'plan_item',
  'exists (select from plan_session s join plan p on p.team_id = s.team_id and p.id = s.plan_id where s.team_id = x.team_id and s.id = x.session_id and p.client_id = $2)',
);

/** With the team each was given to: this one, or one that the client came from. */
const OF_CONSENT = 'id, client_id, kind, text_version, given_at, withdrawn_at, given_by, withdrawn_by';
const CONSENTS = `select to_jsonb(x) - 'team_id' as row from (
  select team_id, ${OF_CONSENT}, (select name from team t where t.id = team_id) as to_team from consent
  union all select team_id, ${OF_CONSENT}, to_team from consent_elsewhere) x where x.team_id = $1 and x.client_id = $2`;

const SOURCES: readonly Source[] = [
  { name: 'client', sql: OWN('client', 'x.id = $2') },
  { name: 'guardian', sql: OWN('guardian', MINE) },
  { name: 'intake', sql: OWN('intake', MINE) },
  { name: 'consent', sql: CONSENTS, order: 'x.given_at' },
  {
    name: 'limit_rule',
    sql: OWN('limit_rule', MINE),
    first: 'x.from_date',
    last: 'x.until_date',
    order: 'x.from_date',
  },
  { name: 'clinician_word', sql: OWN('clinician_word', MINE), order: 'x.date' },
  {
    name: 'absence',
    sql: OWN('absence', MINE),
    first: 'x.from_date',
    last: 'x.to_date',
    order: 'x.from_date',
  },
  {
    name: 'private_note',
    sql: OWN('private_note', MINE),
    first: dated('x.created_at'),
    order: 'x.created_at',
  },
  { name: 'goal', sql: OWN('goal', MINE), first: 'x.from_date', last: 'x.ended_on', order: 'x.from_date' },
  { name: 'standing_change', sql: OWN('standing_change', MINE), order: 'x.created_at' },
  { name: 'client_move', sql: OWN('client_move', MINE), order: 'x.at' },
  { name: 'team_settings', sql: OWN('team_settings', MINE), order: 'x.version' },
  {
    name: 'member',
    sql: `select jsonb_build_object('id', x.id, 'name', x.name) as row from member x where x.team_id = $1 and x.id in (${NAMED})`,
  },
  { name: 'assessment', sql: OWN('assessment', MINE), first: 'x.on_date', order: 'x.created_at' },
  { name: 'start_tests', sql: OWN('start_tests', MINE), first: dated('x.asked_at'), order: 'x.asked_at' },
  {
    name: 'placement',
    sql: OWN('placement', MINE),
    first: 'x.from_date',
    last: "'infinity'::date",
    order: 'x.from_date',
  },
  { name: 'plan', sql: OWN('plan', MINE), order: 'x.version' },
  { name: 'plan_session', sql: ofPlan, order: 'x.plan_id, x.position' },
  { name: 'plan_item', sql: ofSession, order: 'x.session_id, x.position' },
  { name: 'check_in', sql: OWN('check_in', MINE), first: 'x.date', order: 'x.date, x.received_at' },
  {
    name: 'check_in_set',
    sql: ofCheckIn('check_in_set'),
    first: '(select date from check_in c where c.team_id = x.team_id and c.id = x.check_in_id)',
    order: 'x.check_in_id, x.rung_id, x.side, x.idx',
  },
  {
    name: 'pain_score',
    sql: ofCheckIn('pain_score'),
    first: '(select date from check_in c where c.team_id = x.team_id and c.id = x.check_in_id)',
    order: 'x.check_in_id, x.region, x.side, x.moment',
  },
  {
    name: 'danger_sign_told',
    sql: ofCheckIn('danger_sign_told'),
    first: '(select date from check_in c where c.team_id = x.team_id and c.id = x.check_in_id)',
    order: 'x.check_in_id, x.sign',
  },
  { name: 'question', sql: OWN('question', MINE), first: dated('x.asked_at'), order: 'x.asked_at' },
  {
    name: 'answer',
    sql: within('answer', 'question', 'question_id'),
    first: dated('x.created_at'),
    order: 'x.created_at',
  },
  {
    name: 'question_still',
    sql: OWN('question_still', MINE),
    first: `coalesce(${FILMED_ON}, ${dated('x.created_at')})`,
    order: 'x.created_at',
  },
  { name: 'coach_word', sql: OWN('coach_word', MINE), first: dated('x.created_at'), order: 'x.created_at' },
  { name: 'seen_mark', sql: OWN('seen_mark', MINE), first: dated('x.at'), order: 'x.at' },
  {
    name: 'film_request',
    sql: OWN('film_request', MINE),
    first: dated('x.created_at'),
    order: 'x.created_at',
  },
  { name: 'clip', sql: OWN('clip', MINE), first: 'x.filmed_on', order: 'x.created_at' },
  { name: 'set_verdict', sql: OWN('set_verdict', MINE), first: FILMED_ON, order: 'x.at' },
  { name: 'still_frame', sql: OWN('still_frame', MINE), first: dated('x.created_at'), order: 'x.created_at' },
  {
    name: 'reason',
    sql: OWN('reason', MINE),
    first: 'x.since',
    last: `coalesce(${dated('x.closed_at')}, 'infinity')`,
    order: 'x.raised_at',
  },
  { name: 'reason_event', sql: ofReason('reason_event'), first: dated('x.at'), order: 'x.at' },
  { name: 'verdict', sql: ofReason('verdict'), first: dated('x.at'), order: 'x.at' },
  { name: 'step_taken', sql: OWN('step_taken', MINE), first: 'x.taken_on', order: 'x.taken_on' },
  {
    name: 'step_outcome',
    sql: within('step_outcome', 'step_taken', 'step_id'),
    first: '(select taken_on from step_taken s where s.team_id = x.team_id and s.id = x.step_id)',
    order: 'x.step_id, x.window_days',
  },
  {
    name: 'reason_outcome',
    sql: ofReason('reason_outcome'),
    first: dated('x.at'),
    order: 'x.reason_id, x.window_days',
  },
  {
    name: 'skill',
    sql: OWN(
      'skill',
      `(x.id in (select skill_id from part where team_id = $1 and id in (${PARTS})) or x.id in (select skill_id from goal where team_id = $1 and client_id = $2) or x.id in (select skill_id from assessment where team_id = $1 and client_id = $2)
        or x.id in (select (a->>'skillId')::uuid from start_tests s cross join jsonb_array_elements(s.aims) a where s.team_id = $1 and s.client_id = $2))`,
    ),
    order: 'x.position',
  },
  { name: 'part', sql: OWN('part', `x.id in (${PARTS})`), order: 'x.skill_id, x.position' },
  { name: 'ladder', sql: OWN('ladder', `x.id in (${LADDERS})`), order: 'x.part_id, x.position' },
  { name: 'drill', sql: OWN('drill', `x.ladder_id in (${LADDERS})`), order: 'x.ladder_id, x.name' },
  { name: 'rung', sql: OWN('rung', `x.ladder_id in (${LADDERS})`), order: 'x.ladder_id, x.position' },
  { name: 'support_profile', sql: OWN('support_profile', '$2::uuid is not null'), order: 'x.key' },
];

/** The rows of a period, table by table, in one fixed order. Private notes only where they are asked for. */
export function openRecordRows(tx: TeamPg, asked: Asked): RecordRows[] {
  return SOURCES.filter(({ name }) => asked.notes || name !== 'private_note').map((source) => ({
    name: source.name,
    rows: async function* () {
      for await (const batch of readInBatches<{ row: Record<string, unknown> }>(
        tx,
        sqlOf(source, asked),
        asked.clientId,
      )) {
        yield batch.map(({ row }) => (source.name === 'client' && !asked.notes ? withoutNote(row) : row));
      }
    },
  }));
}

/** Dates come from a parsed form, and are quoted again all the same. */
function sqlOf({ sql, first, last, order }: Source, { from, to }: Asked): string {
  const begun = first ? ` and ${first} <= ${quoted(to)}` : '';
  const stillOn =
    first && from !== null ? ` and coalesce(${last ?? first}, 'infinity') >= ${quoted(from)}` : '';
  return `${sql}${begun}${stillOn} order by ${order ? `${order}, ` : ''}x.id`;
}

function quoted(date: string): string {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) throw new Error('not a date');
  return `'${date}'::date`;
}

function withoutNote({ note: _, ...row }: Record<string, unknown>): Record<string, unknown> {
  return row;
}
