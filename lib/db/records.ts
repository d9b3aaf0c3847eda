import type { Batches, RecordSource } from '#lib/domain/record.ts';
import type { TeamPg } from './client.ts';
import { readInBatches } from './read-in-batches.ts';
import { CLINICIAN_WORDS, CONSENTS, FILMS, INTAKE, NOTES, SEEN, VERDICTS } from './record-beside.ts';

const UTC = `'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'`;
/** An instant column as ISO 8601 text in UTC. */
const iso = (column: string) => `to_char(${column} at time zone 'UTC', ${UTC})`;

const OF_CHECK_IN = `c.id as "checkInId", c.date, c.zone, (c.replaced_at is not null or c.deleted_at is not null) as replaced`;
const IN_ORDER = 'order by c.date, c.sent_at, c.id';
const kept = (table: string, key: string) =>
  `from ${table} x join check_in c on c.team_id = x.team_id and c.id = x.${key}`;
const OF_CLIENT = 'where c.team_id = $1 and c.client_id = $2';

const CHECK_INS = `select id, date, zone, kind, session, plan_version as "planVersion", effort, minutes, ground,
  sleep_hours as "sleepHours", nothing_hurts as "nothingHurts", words, ${iso('started_at')} as "startedAt",
  ${iso('sent_at')} as "sentAt", ${iso('received_at')} as "receivedAt", corrects_id as "correctsId",
  ${iso('replaced_at')} as "replacedAt", ${iso('deleted_at')} as "deletedAt" from check_in c ${OF_CLIENT} ${IN_ORDER}`;
const RUNG = `join rung r on r.team_id = x.team_id and r.id = x.rung_id
  join drill d on d.team_id = r.team_id and d.id = r.drill_id
  join ladder l on l.team_id = r.team_id and l.id = r.ladder_id`;
const SETS = `select ${OF_CHECK_IN}, s.name as skill, l.name as ladder, r.name as rung, d.measure, x.side, x.idx,
  x.planned, x.value, x.tried, x.how, x.clean, coalesce(x.faults, '{}') as faults, x.support, x.added_kg as "addedKg",
  v.verdict as "onFilm", coalesce(v.faults, '{}') as "faultsOnFilm"
  ${kept('check_in_set', 'check_in_id')} ${RUNG}
  left join lateral (select verdict, faults from set_verdict v where v.team_id = x.team_id and v.check_in_id = x.check_in_id
    and v.rung_id = x.rung_id and v.side = x.side and v.idx = x.idx and v.undone_at is null order by v.at desc, v.id desc limit 1) v on true
  join part p on p.team_id = l.team_id and p.id = l.part_id
  join skill s on s.team_id = p.team_id and s.id = p.skill_id ${OF_CLIENT} ${IN_ORDER}, l.position, r.position, x.side, x.idx`;
const PAIN = `select ${OF_CHECK_IN}, x.region, x.side, x.moment, x.value, x.kind, x.usual
  ${kept('pain_score', 'check_in_id')} ${OF_CLIENT} ${IN_ORDER}, x.region, x.side, x.moment`;
const DANGER_SIGNS = `select ${OF_CHECK_IN}, x.sign, x.gone_within_minute as "goneWithinMinute", x.region, x.side
  ${kept('danger_sign_told', 'check_in_id')} ${OF_CLIENT} ${IN_ORDER}, x.sign`;
const REASONS = `select id, kind, coalesce(subject->>'label', '') as subject, level, tier, points, sentence, short,
  coalesce(step->>'text', '') as "proposedStep", clears, since, ${iso('raised_at')} as "raisedAt",
  ${iso('closed_at')} as "closedAt", closed_why as "closedWhy", state
  from reason c where c.team_id = $1 and c.client_id = $2 order by raised_at, id`;
const EVENTS = `select x.reason_id as "reasonId", ${iso('x.at')} as at, x.what, x.level, m.name as by, x.body::text as body
  from reason_event x join reason c on c.team_id = x.team_id and c.id = x.reason_id
  left join member m on m.team_id = x.team_id and m.id = x.by_id
  where c.team_id = $1 and c.client_id = $2 order by x.at, x.id`;
const STEPS = `select c.reason_id as "reasonId", c.kind, c.taken_on as "takenOn", c.review_on as "reviewOn", c.words,
  ${iso('c.undone_at')} as "undoneAt", o.window_days as "windowDays", o.outcome
  from step_taken c left join step_outcome o on o.team_id = c.team_id and o.step_id = c.id
  where c.team_id = $1 and c.client_id = $2 order by c.taken_on, c.id, o.window_days`;
const LEFT_ALONE = `select c.id as "reasonId", c.kind, c.known_from as "knownFrom", o.window_days as "windowDays", o.outcome
  from reason c join reason_outcome o on o.team_id = c.team_id and o.reason_id = c.id
  where c.team_id = $1 and c.client_id = $2 order by c.known_from, c.id, o.window_days`;
const PLANS = `select c.version, c.from_date as "from", c.until_date as until, c.sessions_per_week as "sessionsPerWeek", c.why,
  coalesce(c.easy_weeks, '{}')::text[] as "easyWeeks", coalesce(c.test_weeks, '{}')::text[] as "testWeeks", coalesce(c.no_kit_weeks, '{}')::text[] as "noKitWeeks",
  c.notes, m.name as by, ${iso('c.created_at')} as "savedAt", c.accepted_week_au as "acceptedWeekAu", s.label as session,
  s.rest_seconds as "restSeconds", s.warm_up as "warmUp", s.warm_up_minutes as "warmUpMinutes", s.minutes as "sessionMinutes",
  l.name as ladder, r.name as rung, d.measure, x.side, x.sets, x.target, x.minutes, x.times_per_week as "timesPerWeek",
  x.support, x.stop_rule as "stopRule", x.not_two_days_running as "notTwoDaysRunning", pr.name as "pairedWith",
  nr.name as "noKitRung" from plan c left join member m on m.team_id = c.team_id and m.id = c.by_id
  left join plan_session s on s.team_id = c.team_id and s.plan_id = c.id
  left join plan_item x on x.team_id = s.team_id and x.session_id = s.id
  left join rung r on r.team_id = x.team_id and r.id = x.rung_id
  left join drill d on d.team_id = r.team_id and d.id = r.drill_id
  left join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  left join plan_item o on o.team_id = x.team_id and o.id = x.paired_with_id
  left join rung pr on pr.team_id = o.team_id and pr.id = o.rung_id
  left join rung nr on nr.team_id = x.team_id and nr.id = x.no_kit_rung_id
  where c.team_id = $1 and c.client_id = $2 order by c.version, s.position, x.position`;
const GOALS = `select s.name as skill, c.from_date as "from", c.wanted_by as "wantedBy", c.ended_on as "endedOn" from goal c
  join skill s on s.team_id = c.team_id and s.id = c.skill_id
  where c.team_id = $1 and c.client_id = $2 order by c.from_date, s.position, c.id`;
const IN_PARTS = `cross join lateral jsonb_array_elements(c.answers->'parts') with ordinality as p(seen, at)
  cross join lateral jsonb_array_elements(p.seen->'sides') with ordinality as x(seen, at)`;
const ASSESSED = `select c.id, c.on_date as date, ${iso('c.created_at')} as "savedAt", m.name as by, s.name as skill, aim.name as aim,
  array(select jsonb_array_elements_text(c.answers->'kit')) as kit, p.at::int as "partAt", pa.name as part, l.name as ladder,
  asked.name as asked, x.seen->>'side' as side, coalesce(x.seen->>'film', 'not-seen') as film, r.name as rung, d.measure,
  (x.seen->>'sets')::float8 as sets, (x.seen->>'value')::float8 as value, (x.seen->>'clean')::boolean as clean,
  (x.seen->>'pain')::float8 as pain from assessment c
  join skill s on s.team_id = c.team_id and s.id = c.skill_id ${IN_PARTS}
  left join member m on m.team_id = c.team_id and m.id = c.by_id
  left join rung aim on aim.team_id = c.team_id and aim.id = (c.answers->>'aimRungId')::uuid
  left join ladder l on l.team_id = c.team_id and l.id = (p.seen->>'ladderId')::uuid
  left join part pa on pa.team_id = l.team_id and pa.id = l.part_id
  left join rung asked on asked.team_id = c.team_id and asked.id = (p.seen->>'askedRungId')::uuid
  left join rung r on r.team_id = c.team_id and r.id = (x.seen->>'rungId')::uuid
  left join drill d on d.team_id = r.team_id and d.id = r.drill_id
  where c.team_id = $1 and c.client_id = $2 order by c.created_at, c.id, p.at, x.at`;
const START_TESTS = `select c.id, ${iso('c.asked_at')} as "askedAt", m.name as by, l.name as ladder, r.name as rung, d.measure,
  coalesce(a.told->>'side', 'both') as side, (t.asked->>'sets')::int as sets, (t.asked->>'film')::boolean as film,
  a.told->>'outcome' as outcome, array(select jsonb_array_elements_text(coalesce(a.told->'values', '[]'))::float8) as values,
  (a.told->>'tried')::int as tried, (a.told->>'clean')::boolean as clean, (a.told->>'pain')::int as pain, a.told->>'region' as region,
  ${iso('c.done_at')} as "doneAt", ${iso('c.ended_at')} as "endedAt", ${iso('c.placed_at')} as "placedAt" from start_tests c
  join member m on m.team_id = c.team_id and m.id = c.by_id
  cross join lateral jsonb_array_elements(c.tests) with ordinality as t(asked, at)
  left join lateral (select told from jsonb_array_elements(c.answers) told
    where told->>'rungId' = t.asked->>'rungId') a on true
  left join rung r on r.team_id = c.team_id and r.id = (t.asked->>'rungId')::uuid
  left join drill d on d.team_id = r.team_id and d.id = r.drill_id
  left join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
  where c.team_id = $1 and c.client_id = $2 order by c.asked_at, c.id, t.at, a.told->>'side'`;
const PLACEMENTS = `select l.name as ladder, r.name as rung, c.side, c.from_date as "from", c.why from placement c
  join rung r on r.team_id = c.team_id and r.id = c.rung_id join ladder l on l.team_id = c.team_id and l.id = c.ladder_id
  where c.team_id = $1 and c.client_id = $2 order by c.from_date, l.position, c.side`;
const QUESTIONS = `select c.id, ${iso('c.asked_at')} as "askedAt", c.text, ${iso('c.answered_at')} as "answeredAt",
  m.name as "answeredBy", a.text as answer, array(select st.id::text from question_still st
    where st.team_id = c.team_id and st.question_id = c.id order by st.created_at, st.id) as stills from question c
  left join answer a on a.team_id = c.team_id and a.question_id = c.id
  left join member m on m.team_id = a.team_id and m.id = a.by_id
  where c.team_id = $1 and c.client_id = $2 order by c.asked_at, c.id, a.created_at`;
const COACH_WORDS = `select ${iso('c.created_at')} as "writtenAt", m.name as by, c.check_in_id as "checkInId", k.date,
  coalesce(r.name, fr.name) as rung, coalesce(x.side, f.side) as side, x.idx as set, f.filmed_on::text as "filmedOn",
  c.at_seconds as "atSeconds", c.text, ${iso('c.read_at')} as "readAt" from coach_word c
  join member m on m.team_id = c.team_id and m.id = c.by_id
  left join check_in k on k.team_id = c.team_id and k.id = c.check_in_id
  left join check_in_set x on x.team_id = c.team_id and x.id = c.set_id
  left join rung r on r.team_id = x.team_id and r.id = x.rung_id
  left join clip f on f.team_id = c.team_id and f.id = c.clip_id
  left join rung fr on fr.team_id = f.team_id and fr.id = f.rung_id
  where c.team_id = $1 and c.client_id = $2 order by c.created_at, c.id`;
const ABSENCES = `select c.kind, c.from_date as "from", c.to_date as "to", ${iso('c.said_at')} as "saidAt"
  from absence c where c.team_id = $1 and c.client_id = $2 order by c.from_date, c.id`;

const LIMITS = `select c.id, c.rule, c.tissue, c.region, c.side, c.percent, c.from_date as "from", c.until_date as until,
  ${iso('c.ended_at')} as "endedAt", c.who, c.words
  from limit_rule c where c.team_id = $1 and c.client_id = $2 order by c.from_date, c.id`;

/**
 * The whole kept record of one client, corrections beside their originals, deleted check-ins too, oldest first. Nothing is
 * read before it is asked for, a thousand rows at a time; good as long as the transaction is open.
 */
export function openRecord(tx: TeamPg, clientId: string): RecordSource {
  const rows =
    <Row extends object>(sql: string): Batches<Row> =>
    () =>
      readInBatches<Row>(tx, sql, clientId);
  return {
    checkIns: rows(CHECK_INS),
    sets: rows(SETS),
    pain: rows(PAIN),
    dangerSigns: rows(DANGER_SIGNS),
    reasons: rows(REASONS),
    reasonEvents: rows(EVENTS),
    steps: rows(STEPS),
    leftAlone: rows(LEFT_ALONE),
    plans: rows(PLANS),
    goals: rows(GOALS),
    assessed: rows(ASSESSED),
    startTests: rows(START_TESTS),
    placements: rows(PLACEMENTS),
    questions: rows(QUESTIONS),
    coachWords: rows(COACH_WORDS),
    absences: rows(ABSENCES),
    limits: rows(LIMITS),
    clinicianWords: rows(CLINICIAN_WORDS),
    films: rows(FILMS),
    seen: rows(SEEN),
    verdicts: rows(VERDICTS),
    intake: rows(INTAKE),
    consents: rows(CONSENTS),
    notes: rows(NOTES),
  };
}
