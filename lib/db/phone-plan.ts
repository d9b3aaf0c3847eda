import type { Fault, Measure, Side, Support } from '#lib/domain/vocabulary.ts';
import type { TeamPg } from './client.ts';

export type PlannedItem = {
  id: string;
  rungId: string;
  rung: string;
  ladderId: string;
  ladder: string;
  measure: Measure;
  eachSide: boolean;
  faults: Fault[];
  passTarget: number;
  passTries: number | null;
  side: Side;
  sets: number;
  target: number | null;
  minutes: number | null;
  support: Support | null;
  stopRule: string;
};
export type PlannedSession = { label: string; minutes: number | null; warmUp: string; items: PlannedItem[] };
export type PhonePlan = { version: number; until: string | null; sessions: PlannedSession[] };

type ItemRow = Omit<PlannedItem, 'id'> & {
  id: string | null;
  label: string;
  sessionMinutes: number | null;
  warmUp: string;
};

/** The newest plan that has begun by this date, also when its last day has passed. */
export async function findPhonePlan(
  tx: TeamPg,
  clientId: string,
  date: string,
): Promise<PhonePlan | undefined> {
  const { rows: plans } = await tx.client.query<{ id: string; version: number; until: string | null }>(
    `select id, version, until_date as until from plan
     where team_id = $1 and client_id = $2 and from_date <= $3 order by version desc limit 1`,
    [tx.teamId, clientId, date],
  );
  const [plan] = plans;
  if (!plan) return undefined;
  const { rows } = await tx.client.query<ItemRow>(
    `select s.label, s.minutes as "sessionMinutes", s.warm_up as "warmUp", x.id, x.rung_id as "rungId", r.name as rung,
       l.id as "ladderId", l.name as ladder, d.measure, d.each_side as "eachSide", l.faults,
       r.pass_target as "passTarget", r.pass_tries as "passTries", x.side, x.sets, x.target, x.minutes, x.support,
       x.stop_rule as "stopRule"
     from plan_session s
     left join plan_item x on x.team_id = s.team_id and x.session_id = s.id
     left join rung r on r.team_id = x.team_id and r.id = x.rung_id
     left join drill d on d.team_id = r.team_id and d.id = r.drill_id
     left join ladder l on l.team_id = r.team_id and l.id = r.ladder_id
     where s.team_id = $1 and s.plan_id = $2 order by s.position, s.label, x.position`,
    [tx.teamId, plan.id],
  );
  return { version: plan.version, until: plan.until, sessions: gather(rows) };
}

function gather(rows: ItemRow[]): PlannedSession[] {
  const byLabel = new Map<string, PlannedSession>();
  for (const { label, sessionMinutes, warmUp, id, ...item } of rows) {
    const session = byLabel.get(label) ?? { label, minutes: sessionMinutes, warmUp, items: [] };
    byLabel.set(label, session);
    if (id !== null) session.items.push({ id, ...item });
  }
  return [...byLabel.values()];
}
