import type { HistoryPlan } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';
import { PLAN_ITEM_FROM, PLAN_ITEM_JSON, PLAN_SESSION_JSON } from './plan-json.ts';

type PlanRow = HistoryPlan & { clientId: string };

/** All versions of the plans of many clients, oldest first, with their items, in one query. */
export async function listHistoryPlans(tx: TeamPg, clientIds: string[]): Promise<Map<string, HistoryPlan[]>> {
  const { rows } = await tx.client.query<PlanRow>(
    `select p.client_id as "clientId", p.version, p.from_date as "from", p.until_date as "until",
       p.sessions_per_week as "sessionsPerWeek", to_json(coalesce(p.easy_weeks, '{}')) as "easyWeeks",
       to_json(coalesce(p.test_weeks, '{}')) as "testWeeks", p.accepted_week_au as "acceptedWeekAu",
       coalesce(p.skills_in_focus, '{}') as "skillsInFocus",
       to_json(coalesce(p.no_kit_weeks, '{}')) as "noKitWeeks", m.name as by, p.why, p.notes,
       coalesce((select json_agg(${PLAN_SESSION_JSON}) from plan_session s
         where s.team_id = p.team_id and s.plan_id = p.id), '[]'::json) as sessions,
       coalesce((select json_agg(${PLAN_ITEM_JSON}) from ${PLAN_ITEM_FROM}
         where s.team_id = p.team_id and s.plan_id = p.id), '[]'::json) as items
     from plan p left join member m on m.team_id = p.team_id and m.id = p.by_id
     where p.team_id = $1 and p.client_id = any($2::uuid[])
     order by p.client_id, p.version`,
    [tx.teamId, clientIds],
  );
  const byClient = new Map<string, HistoryPlan[]>();
  for (const { clientId, ...row } of rows) {
    const plan: HistoryPlan = {
      version: row.version,
      from: row.from,
      until: row.until,
      sessionsPerWeek: row.sessionsPerWeek,
      items: row.items,
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
