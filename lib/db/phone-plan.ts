import type { PlanLine } from '#lib/domain/plan-line.ts';
import type { Fault, Measure, Side, Support } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';
import { PLAN_ITEM_FROM, PLAN_ITEM_JSON } from './plan-json.ts';

/** A rung as a planned line names it. */
export type PlannedRung = {
  rungId: string;
  rung: string;
  ladderId: string;
  ladder: string;
  measure: Measure;
  eachSide: boolean;
  faults: Fault[];
  passTarget: number;
  passTries: number | null;
};
export type PlannedItem = PlannedRung & {
  id: string;
  side: Side;
  sets: number;
  target: number | null;
  minutes: number | null;
  support: Support | null;
  stopRule: string;
  notTwoDaysRunning: boolean;
  /** Name of the rung it is done together with. */
  pairedWith: string | null;
  equipment: string[];
  /** What stands in for it without kit. */
  noKit: PlannedRung | null;
};
export type PlannedSession = {
  label: string;
  minutes: number | null;
  warmUp: string;
  warmUpMinutes: number;
  restSeconds: number | null;
  items: PlannedItem[];
};
export type PhonePlan = {
  version: number;
  until: string | null;
  notes: string;
  easyWeeks: string[];
  testWeeks: string[];
  noKitWeeks: string[];
  sessions: PlannedSession[];
};

/** The parts of a rung, of the rows `r`, `d` and `l` with this number behind the letter. */
const rungJson = (
  n: string,
) => `jsonb_build_object('rungId', r${n}.id, 'rung', r${n}.name, 'ladderId', l${n}.id,
  'ladder', l${n}.name, 'measure', d${n}.measure, 'eachSide', d${n}.each_side, 'faults', coalesce(l${n}.faults, '{}'),
  'passTarget', r${n}.pass_target, 'passTries', r${n}.pass_tries)`;
const rungJoins = (
  n: string,
) => `join drill d${n} on d${n}.team_id = r${n}.team_id and d${n}.id = r${n}.drill_id
  left join ladder l${n} on l${n}.team_id = r${n}.team_id and l${n}.id = r${n}.ladder_id`;

/** The newest plan that has begun by this date, also when its last day has passed. */
export async function findPhonePlan(
  tx: TeamPg,
  clientId: string,
  date: string,
): Promise<PhonePlan | undefined> {
  const { rows } = await tx.client.query<PhonePlan>(
    `select q.version, q.until_date as until, q.notes, coalesce(q.easy_weeks, '{}')::text[] as "easyWeeks",
       coalesce(q.test_weeks, '{}')::text[] as "testWeeks", coalesce(q.no_kit_weeks, '{}')::text[] as "noKitWeeks",
       coalesce((select json_agg(json_build_object('label', s.label, 'minutes', s.minutes, 'warmUp', s.warm_up,
           'warmUpMinutes', coalesce(s.warm_up_minutes, 0), 'restSeconds', s.rest_seconds, 'items', coalesce((
             select json_agg(${rungJson('')} || jsonb_build_object('id', x.id, 'side', x.side, 'sets', x.sets,
                 'target', x.target, 'minutes', x.minutes, 'support', x.support, 'stopRule', x.stop_rule,
                 'notTwoDaysRunning', x.not_two_days_running, 'pairedWith', pr.name,
                 'equipment', coalesce(d.equipment, '{}'),
                 'noKit', case when r2.id is null then null else ${rungJson('2')} end) order by x.position)
             from plan_item x
             join rung r on r.team_id = x.team_id and r.id = x.rung_id ${rungJoins('')}
             left join plan_item o on o.team_id = x.team_id and o.id = x.paired_with_id
             left join rung pr on pr.team_id = o.team_id and pr.id = o.rung_id
             left join (rung r2 ${rungJoins('2')}) on r2.team_id = x.team_id and r2.id = x.no_kit_rung_id
             where x.team_id = s.team_id and x.session_id = s.id), '[]')) order by s.position, s.label)
         from plan_session s where s.team_id = q.team_id and s.plan_id = q.id), '[]') as sessions
     from plan q where q.team_id = $1 and q.client_id = $2 and q.from_date <= $3::date order by q.version desc limit 1`,
    [tx.teamId, clientId, date],
  );
  return rows[0];
}

/** The version that the client trained by the last time; undefined: has not trained by one yet. */
export async function findLastTrainedVersion(tx: TeamPg, clientId: string): Promise<number | undefined> {
  const { rows } = await tx.client.query<{ version: number | null }>(
    `select coalesce(c.plan_version, (select max(p.version) from plan p where p.team_id = c.team_id
         and p.client_id = c.client_id and p.from_date <= c.date and p.created_at <= c.received_at)) as version
     from check_in c where c.team_id = $1 and c.client_id = $2 and c.kind = 'training'
       and c.replaced_at is null and c.deleted_at is null order by c.date desc, c.sent_at desc limit 1`,
    [tx.teamId, clientId],
  );
  return rows[0]?.version ?? undefined;
}

/** The lines of one version of a plan. */
export async function listPlanItems(tx: TeamPg, clientId: string, version: number): Promise<PlanLine[]> {
  const { rows } = await tx.client.query<{ items: PlanLine[] }>(
    `select coalesce(json_agg(${PLAN_ITEM_JSON}), '[]') as items
     from plan q join ${PLAN_ITEM_FROM} on s.team_id = q.team_id and s.plan_id = q.id
     where q.team_id = $1 and q.client_id = $2 and q.version = $3`,
    [tx.teamId, clientId, version],
  );
  return rows[0]?.items ?? [];
}

/** The first day of a newer version that has not begun; undefined: there is none. */
export async function findComingPlan(
  tx: TeamPg,
  clientId: string,
  date: string,
): Promise<string | undefined> {
  const { rows } = await tx.client.query<{ from: string | null }>(
    `select (select from_date from plan where team_id = $1 and client_id = $2 and from_date > $3::date
       order by version desc limit 1) as "from"`,
    [tx.teamId, clientId, date],
  );
  return rows[0]?.from ?? undefined;
}
