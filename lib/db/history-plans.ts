import type { HistoryPlan, HistoryPlanItem } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { PLAN_SESSION_JSON } from './plan-json.ts';

type PlanRow = Omit<HistoryPlan, 'items'> & { clientId: string; lines: string | null };

// Lines come as text: a night reads a hundred of them for a client, and JSON takes the server several times as long.
// Unit and record separators, which no text of ours holds, part fields and lines; an empty field is none.
const [FIELD, LINE] = ['\u001f', '\u001e'];
const FIELDS = [
  's.label',
  'i.rung_id::text',
  'i.side',
  'i.sets::text',
  'i.target::text',
  'i.minutes::text',
  'i.times_per_week::text',
  'i.support',
  'i.stop_rule',
  `case when i.not_two_days_running then '1' end`,
  `case when i.paired_with_id is not null then
    (select o.rung_id::text from plan_item o where o.team_id = i.team_id and o.id = i.paired_with_id) end`,
  'i.no_kit_rung_id::text',
].map((field) => `coalesce(${field}, '')`);

/**
 * The plans of many clients, oldest version first, with their items, in one query. With `from`, those that can have held
 * on that date or later, and each client's first one, which says when the planning began.
 */
export async function listHistoryPlans(
  tx: TeamPg,
  clientIds: string[],
  from: (clientId: string) => string | null,
): Promise<Map<string, HistoryPlan[]>> {
  const { rows } = await tx.client.query<PlanRow>(
    `select p.client_id as "clientId", p.version, p.from_date as "from", p.until_date as "until",
       p.sessions_per_week as "sessionsPerWeek", to_json(coalesce(p.easy_weeks, '{}')) as "easyWeeks",
       to_json(coalesce(p.test_weeks, '{}')) as "testWeeks", p.accepted_week_au as "acceptedWeekAu",
       coalesce(p.skills_in_focus, '{}') as "skillsInFocus",
       to_json(coalesce(p.no_kit_weeks, '{}')) as "noKitWeeks", m.name as by, p.why, p.notes,
       coalesce((select json_agg(${PLAN_SESSION_JSON}) from plan_session s
         where s.team_id = p.team_id and s.plan_id = p.id), '[]'::json) as sessions,
       (select string_agg(concat_ws(chr(31), ${FIELDS}), chr(30) order by s.position, s.label, i.position)
         from plan_session s join plan_item i on i.team_id = s.team_id and i.session_id = s.id
         where s.team_id = p.team_id and s.plan_id = p.id) as lines
     from (select plan.*, asked.from_date as asked_from,
         max(version) filter (where plan.from_date <= asked.from_date) over (partition by client_id) as held,
         min(version) over (partition by client_id) as first
       from unnest($2::uuid[], $3::date[]) as asked(id, from_date)
       join plan on plan.team_id = $1 and plan.client_id = asked.id) p
       left join member m on m.team_id = p.team_id and m.id = p.by_id
     where p.asked_from is null or p.from_date >= p.asked_from or p.version >= p.held or p.version = p.first
     order by p.client_id, p.version`,
    [tx.teamId, clientIds, clientIds.map(from)],
  );
  const byClient = new Map<string, HistoryPlan[]>();
  for (const { clientId, lines, ...row } of rows) {
    const plan: HistoryPlan = {
      version: row.version,
      from: row.from,
      until: row.until,
      sessionsPerWeek: row.sessionsPerWeek,
      items: lines === null ? [] : lines.split(LINE).map(toItem),
      easyWeeks: row.easyWeeks,
      testWeeks: row.testWeeks,
      acceptedWeekAu: row.acceptedWeekAu,
      skillsInFocus: row.skillsInFocus,
      noKitWeeks: row.noKitWeeks,
      sessions: row.sessions,
      by: row.by,
      why: row.why,
      notes: row.notes,
    };
    const plans = byClient.get(clientId);
    if (plans) plans.push(plan);
    else byClient.set(clientId, [plan]);
  }
  return byClient;
}

function toItem(line: string): HistoryPlanItem {
  const [
    session = '',
    rungId = '',
    side,
    sets,
    target,
    minutes,
    times,
    support,
    stopRule = '',
    apart,
    paired,
    noKit,
  ] = line.split(FIELD);
  return {
    session,
    rungId,
    side: side as HistoryPlanItem['side'],
    sets: Number(sets),
    target: target ? Number(target) : null,
    minutes: minutes ? Number(minutes) : null,
    timesPerWeek: Number(times),
    support: (support || null) as HistoryPlanItem['support'],
    stopRule,
    notTwoDaysRunning: apart === '1',
    pairedWith: paired || null,
    noKitRungId: noKit || null,
  };
}
