import { DEFAULT_LIMITS, type Limits } from '#lib/checks/thresholds.ts';
import { usualTimeHere } from '#lib/checks/usual-time-here.ts';
import { LONG_VIEW_DAYS } from '#lib/checks/view.ts';
import type {
  AnsweringHours,
  ClientHistory,
  HistoryAbsence,
  HistoryCheckIn,
  HistoryClient,
  HistoryFilm,
  HistoryGoal,
  HistoryLimit,
  HistoryPlacement,
  HistoryQuestion,
  HistoryRung,
  HistoryStartTests,
  HistoryStep,
  UsualDaysHere,
} from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { listHistoryPlans } from './history-plans.ts';
import { listHistoryRungs } from './history-rungs.ts';
import { rungIdsIn, unpackDays } from './packed-facts.ts';
import { listEffectiveCheckIns } from './raw-check-ins.ts';
import { listTeamStays } from './team-stays.ts';

/** How far back pages read, and whoever compares two days of the past. */
export const HISTORY_DAYS = LONG_VIEW_DAYS;

export type HistoryOptions = {
  /** One date for all, or each client's own; null: everything. */
  from: string | null | ((clientId: string) => string);
  asOf?: string;
  limits?: Limits;
  /** What the rungs of the team took its clients up to that evening, where it is known already. */
  usualTimes?: ReadonlyMap<string, UsualDaysHere> | undefined;
  /** Leaves out plans and marks that the checks cannot ask about from `from` on: years of them cost a night nothing. */
  trim?: boolean;
};

/**
 * The histories of many clients, with one query for each kind of row. `from: 'YYYY-MM-DD'` reads check-ins from
 * that date on out of the day rollups; `from: null` reads everything from the tables they were written to. With
 * `asOf`, rungs carry what they took the team's clients up to that evening, once as many passed as `limits` ask for.
 */
export async function loadHistories(
  tx: TeamPg,
  clientIds: string[],
  options: HistoryOptions,
): Promise<Map<string, ClientHistory>> {
  const opened = await openHistories(tx, clientIds, options);
  return new Map([...opened].map(([id, history]) => [id, history()]));
}

/**
 * The same, read already, each history built when it is asked for: whoever goes through many clients one after the
 * other never holds the sets of all of them. Building one throws where its days cannot be read.
 */
export async function openHistories(
  tx: TeamPg,
  clientIds: string[],
  options: HistoryOptions,
): Promise<Map<string, () => ClientHistory>> {
  const { from } = options;
  const fromOf = (id: string) => (typeof from === 'function' ? from(id) : from);
  // Sent together: the server is never idle while these are read here.
  const [
    clients,
    checkIns,
    plans,
    placements,
    absences,
    questions,
    limits,
    steps,
    seen,
    words,
    goals,
    films,
    startTests,
    answering,
  ] = await Promise.all([
    listClients(tx, clientIds),
    from === null ? listRawCheckIns(tx, clientIds) : listRolledUpCheckIns(tx, clientIds, fromOf),
    listHistoryPlans(tx, clientIds, options.trim ? fromOf : () => null),
    listPlacements(tx, clientIds),
    byClient<HistoryAbsence>(tx, clientIds, ABSENCES),
    byClient<HistoryQuestion>(tx, clientIds, QUESTIONS),
    byClient<HistoryLimit>(tx, clientIds, LIMITS),
    byClient<HistoryStep>(tx, clientIds, STEPS),
    listSeen(tx, clientIds, options.trim ? (options.asOf ?? null) : null),
    byClient<ClientHistory['clinicianWords'][number]>(tx, clientIds, CLINICIAN_WORDS),
    byClient<HistoryGoal>(tx, clientIds, GOALS),
    byClient<HistoryFilm>(tx, clientIds, FILMS),
    byClient<HistoryStartTests>(tx, clientIds, START_TESTS),
    findAnsweringHours(tx),
  ]);

  const rungIdsOf = (id: string) => [
    ...(checkIns.get(id)?.rungIds ?? []),
    ...(plans.get(id) ?? []).flatMap((plan) =>
      plan.items.flatMap((item) => [item.rungId, ...(item.noKitRungId ? [item.noKitRungId] : [])]),
    ),
    ...(placements.get(id) ?? []).map((placement) => placement.rungId),
  ];
  const named = new Map(clients.map((client) => [client.id, new Set(rungIdsOf(client.id))]));
  const rungs = await withUsualTimes(
    tx,
    await listHistoryRungs(tx, [...new Set([...named.values()].flatMap((ids) => [...ids]))]),
    { standing: [...placements.values()].flat().map((placement) => placement.rungId), ...options },
  );

  return new Map(
    clients.map((client) => [
      client.id,
      () => ({
        formatVersion: 1,
        client,
        rungs: rungsOf(rungs, named.get(client.id)),
        plans: plans.get(client.id) ?? [],
        placements: placements.get(client.id) ?? [],
        absences: absences.get(client.id) ?? [],
        checkIns: checkIns.get(client.id)?.build() ?? [],
        questions: questions.get(client.id) ?? [],
        limits: limits.get(client.id) ?? [],
        steps: steps.get(client.id) ?? [],
        seen: seen.get(client.id) ?? [],
        clinicianWords: words.get(client.id) ?? [],
        ...(goals.has(client.id) && { goals: goals.get(client.id) }),
        ...(films.has(client.id) && { films: films.get(client.id) }),
        ...(startTests.has(client.id) && { startTests: startTests.get(client.id) }),
        ...(answering && { answering }),
      }),
    ]),
  );
}

/** The rungs that clients stand on or stood on, with the time they took here. */
async function withUsualTimes(
  tx: TeamPg,
  rungs: HistoryRung[],
  {
    standing,
    asOf,
    limits = DEFAULT_LIMITS,
    usualTimes,
  }: { standing: string[] } & Omit<HistoryOptions, 'from'>,
): Promise<HistoryRung[]> {
  if (asOf === undefined) return rungs;
  const placed = new Set(standing);
  const stays = usualTimes ? undefined : await listTeamStays(tx, [...placed], asOf);
  return rungs.map((rung) => {
    if (!placed.has(rung.id)) return rung;
    const usualDaysHere = usualTimes?.get(rung.id) ?? usualTimeHere(stays?.get(rung.id) ?? [], limits);
    return usualDaysHere ? { ...rung, usualDaysHere } : rung;
  });
}

/** The named rungs and the next one of each, so that a step up can be called by its name. */
function rungsOf(rungs: readonly HistoryRung[], named: ReadonlySet<string> | undefined): HistoryRung[] {
  const open = new Set(
    rungs.filter((rung) => named?.has(rung.id)).map((rung) => `${rung.ladderId} ${rung.position + 1}`),
  );
  return rungs.filter((rung) => named?.has(rung.id) || open.has(`${rung.ladderId} ${rung.position}`));
}

type ClientRow = Omit<
  HistoryClient,
  'invitedAt' | 'joinedAt' | 'intakeSigns' | 'breakWeeks' | 'toldEffort'
> & {
  breakWeeks: number | null;
  toldEffort: number | null;
  intakeSigns: HistoryClient['intakeSigns'] | null;
  invitedAt: Date | null;
  joinedAt: Date | null;
};

async function listClients(tx: TeamPg, clientIds: string[]): Promise<HistoryClient[]> {
  const { rows } = await tx.client.query<ClientRow>(
    `select c.id, c.name, c.zone, c.standing, c.invited_at as "invitedAt", c.joined_at as "joinedAt",
       c.under18, c.body_mass_kg as "bodyMassKg", c.told_week_au as "toldWeekAu",
       case when jsonb_typeof(i.answers #> '{week,effort}') = 'number' then (i.answers #>> '{week,effort}')::float8 end as "toldEffort",
       case when jsonb_typeof(i.answers -> 'breakWeeks') = 'number' then (i.answers ->> 'breakWeeks')::float8 end as "breakWeeks",
       case when jsonb_typeof(i.answers -> 'pain') = 'array' then i.answers -> 'pain' else '[]'::jsonb end as "intakePain", signs.told as "intakeSigns"
     from client c left join intake i on i.team_id = c.team_id and i.client_id = c.id
     left join lateral ${INTAKE_SIGNS} signs on true
     where c.team_id = $1 and c.id = any($2::uuid[]) order by c.id`,
    [tx.teamId, clientIds],
  );
  return rows.map(({ intakeSigns, breakWeeks, toldEffort, ...row }) => ({
    ...row,
    ...(breakWeeks !== null && { breakWeeks }),
    ...(toldEffort !== null && { toldEffort }),
    ...(intakeSigns && { intakeSigns }),
    invitedAt: row.invitedAt?.toISOString() ?? null,
    joinedAt: row.joinedAt?.toISOString() ?? null,
  }));
}

/** Danger signs told at the start, on the client's own day of it, with the day of a clinician's word about each. */
const INTAKE_SIGNS = `(select jsonb_build_object('date', (i.completed_at at time zone c.zone)::date, 'signs',
    jsonb_agg(jsonb_build_object('sign', s.sign, 'wordOn', (select min(w.date) from clinician_word w
      where w.team_id = c.team_id and w.client_id = c.id and w.told = 'sign:' || s.sign and w.lifts)) order by s.sign)) as told
  from jsonb_array_elements_text(case when jsonb_typeof(i.answers -> 'dangerSigns') = 'array'
    then i.answers -> 'dangerSigns' else '[]'::jsonb end) s(sign)
  where i.completed_at is not null
  having count(*) > 0)`;

/** The check-ins of a client, still to be built, and the rungs of their sets. */
type ToldDays = { rungIds: Iterable<string>; build: () => HistoryCheckIn[] };

async function listRawCheckIns(tx: TeamPg, clientIds: string[]): Promise<Map<string, ToldDays>> {
  const raw = await listEffectiveCheckIns(tx, clientIds, null);
  return new Map(
    [...raw].map(([id, checkIns]) => {
      const rungIds = checkIns.flatMap(({ sets }) => sets.map(({ rungId }) => rungId));
      return [id, { rungIds: new Set(rungIds), build: () => checkIns }];
    }),
  );
}

async function listRolledUpCheckIns(
  tx: TeamPg,
  clientIds: string[],
  from: (clientId: string) => string | null,
): Promise<Map<string, ToldDays>> {
  // One text a client: two hundred rows each would take longer to carry than to read, and a page for each day longer to
  // find than one for a week. The days before the first Monday come one by one; the index gives their order.
  const { rows } = await tx.client.query<{ clientId: string; days: string }>(
    `select asked.id as "clientId", '[' || concat_ws(',', first.days, later.days) || ']' as days
     from (select id, from_date, week_of(from_date + 6) as monday
       from unnest($2::uuid[], $3::date[]) as given(id, from_date)) asked
     cross join lateral (select string_agg(packed_day(r.date, r.facts), ',' order by r.date) as days
       from day_rollup r where r.team_id = $1 and r.client_id = asked.id
         and r.date >= asked.from_date and r.date < asked.monday) first
     cross join lateral (select string_agg(w.days, ',' order by w.week) as days
       from week_rollup w where w.team_id = $1 and w.client_id = asked.id and w.week >= asked.monday) later
     where first.days is not null or later.days is not null`,
    [tx.teamId, clientIds, clientIds.map(from)],
  );
  const known = new Map<string, string>();
  return new Map(
    rows.map(({ clientId, days }) => [
      clientId,
      { rungIds: rungIdsIn(days), build: () => unpackDays(days, known) },
    ]),
  );
}

/** ISO 8601 in UTC with milliseconds, as JSON carries an instant. */
const iso = (column: string) => `to_char(${column} at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"')`;

const ABSENCES = `select client_id, jsonb_build_object('from', from_date, 'to', to_date, 'kind', kind) as value,
  from_date::text || id as place, team_id from absence`;
const QUESTIONS = `select q.client_id, jsonb_build_object('id', q.id, 'askedAt', ${iso('q.asked_at')}, 'text', q.text,
    'answeredAt', ${iso('q.answered_at')}, 'answer', (select a.text from answer a
      where a.team_id = q.team_id and a.question_id = q.id order by a.created_at desc, a.id limit 1)) as value,
  ${iso('q.asked_at')} || q.id as place, q.team_id from question q`;
const LIMITS = `select client_id, jsonb_build_object('tissue', tissue, 'region', region, 'side', side, 'rule', rule,
    'percent', percent, 'from', from_date, 'until', least(until_date, (ended_at at time zone 'UTC')::date), 'who', who) as value,
  from_date::text || id as place, team_id from limit_rule`;
const STEPS = `select client_id, jsonb_build_object('kind', kind, 'takenOn', taken_on, 'ladderId', ladder_id, 'side', side,
    'reviewOn', review_on, 'words', words) as value, taken_on::text || id as place, team_id
  from step_taken where undone_at is null`;
const CLINICIAN_WORDS = `select client_id, jsonb_build_object('date', date, 'region', region, 'side', side, 'words', words) as value,
  date::text || id as place, team_id from clinician_word
  where told is null`;

const GOALS = `select g.client_id, jsonb_build_object('skill', s.name, 'from', g.from_date, 'wantedBy', g.wanted_by,
    'endedOn', g.ended_on) as value, g.from_date::text || s.position || g.id as place, g.team_id
  from goal g join skill s on s.team_id = g.team_id and s.id = g.skill_id`;
const ofUse = (clip: string) =>
  `(${clip}.state in ('checking', 'ready') or ${clip}.state = 'gone' and ${clip}.looked_at is not null)`;
/** With what coaches saw on the clips `which` names, the newest of each set; nothing where nobody judged one. */
const seenOnClips = (
  which: string,
) => ` || coalesce((select jsonb_build_object('verdicts', jsonb_agg(seen.value order by seen.at, seen.id))
    from (select distinct on (v.clip_id, v.check_in_id, v.rung_id, v.side, v.idx) v.at, v.id, jsonb_build_object('filmedOn', x.filmed_on,
        'side', v.side, 'checkInId', v.check_in_id, 'index', v.idx, 'verdict', v.verdict, 'faults', coalesce(v.faults, '{}'), 'at', ${iso('v.at')}) as value
      from clip x join set_verdict v on v.team_id = x.team_id and v.clip_id = x.id
      where ${which} and v.undone_at is null
      order by v.clip_id, v.check_in_id, v.rung_id, v.side, v.idx, v.at desc, v.id desc) seen
    having count(*) > 0), '{}')`;
/** Films asked for, with the last clip that came for each and was not refused; and clips that nobody asked for. */
const FILMS = `select f.client_id, jsonb_build_object('id', f.id, 'askedAt', ${iso('f.created_at')},
    'receivedAt', ${iso('c.received_at')}, 'lookedAt', ${iso('c.looked_at')}, 'words', f.words, 'rungId', f.rung_id,
    'side', f.side)${seenOnClips('x.team_id = f.team_id and x.client_id = f.client_id and x.request_id = f.id')} as value,
  ${iso('f.created_at')} || f.id as place, f.team_id
  from film_request f left join lateral (select received_at, looked_at from clip
    where clip.team_id = f.team_id and clip.client_id = f.client_id and clip.request_id = f.id and clip.received_at is not null and ${ofUse('clip')}
    order by received_at desc limit 1) c on true
  where f.taken_back_at is null
  union all select k.client_id, jsonb_build_object('id', k.id, 'askedAt', ${iso('k.received_at')},
    'receivedAt', ${iso('k.received_at')}, 'lookedAt', ${iso('k.looked_at')}, 'words', '', 'rungId', k.rung_id,
    'side', k.side)${seenOnClips('x.team_id = k.team_id and x.id = k.id')},
  ${iso('k.received_at')} || k.id, k.team_id
  from clip k where k.request_id is null and k.received_at is not null and ${ofUse('k')}`;

const START_TESTS = `select client_id, jsonb_build_object('id', id, 'askedAt', ${iso('asked_at')}, 'movedAt', ${iso('moved_at')},
    'doneAt', ${iso('coalesce(done_at, placed_at)')}) as value, ${iso('asked_at')} || id as place, team_id
  from start_tests where ended_at is null`;

/** Many a client: as plain columns they take a night less than as JSON. */
async function listPlacements(tx: TeamPg, clientIds: string[]): Promise<Map<string, HistoryPlacement[]>> {
  const { rows } = await tx.client.query<HistoryPlacement & { clientId: string }>(
    `select client_id as "clientId", ladder_id as "ladderId", side, rung_id as "rungId", from_date as "from"
     from placement where team_id = $1 and client_id = any($2::uuid[])
     order by from_date, ladder_id, side collate "C", id`,
    [tx.teamId, clientIds],
  );
  return gathered(rows.map(({ clientId, ...value }) => ({ clientId, value })));
}

/** When coaches looked, oldest first; with `asOf`, from the last look before that evening on, wherever the client is. */
async function listSeen(
  tx: TeamPg,
  clientIds: string[],
  asOf: string | null,
): Promise<Map<string, string[]>> {
  const { rows } = await tx.client.query<{ clientId: string; seen: string[] }>(
    `select c.id as "clientId", array_agg(${iso('s.at')} order by s.at, s.id) as seen
     from unnest($2::uuid[]) c(id)
     cross join lateral (select coalesce(max(n.at), '-infinity') as at from seen_mark n
       where n.team_id = $1 and n.client_id = c.id and n.at < ($3::date - 1)::timestamptz) before
     join seen_mark s on s.team_id = $1 and s.client_id = c.id and s.at >= before.at
     group by c.id`,
    [tx.teamId, clientIds, asOf],
  );
  return new Map(rows.map(({ clientId, seen }) => [clientId, seen]));
}

/** When the team answers, where it has said so. */
export async function findAnsweringHours(tx: TeamPg): Promise<AnsweringHours | undefined> {
  const { rows } = await tx.client.query<{ hours: AnsweringHours }>(
    `select answering_hours as hours from team where id = $1 and answering_hours ?& '{zone,days,from,to}'`,
    [tx.teamId],
  );
  return rows[0]?.hours;
}

/** One query for all clients: rows in the form of a history, in one fixed order. */
async function byClient<Value>(
  tx: TeamPg,
  clientIds: string[],
  source: string,
): Promise<Map<string, Value[]>> {
  const { rows } = await tx.client.query<{ clientId: string; value: Value }>(
    `select source.client_id as "clientId", source.value from (${source}) source
     where source.team_id = $1 and source.client_id = any($2::uuid[]) order by source.place`,
    [tx.teamId, clientIds],
  );
  return gathered(rows);
}

function gathered<Value>(rows: readonly { clientId: string; value: Value }[]): Map<string, Value[]> {
  const byClient = new Map<string, Value[]>();
  for (const { clientId, value } of rows) {
    const values = byClient.get(clientId);
    if (values) values.push(value);
    else byClient.set(clientId, [value]);
  }
  return byClient;
}
