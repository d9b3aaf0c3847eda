import type { HistoryPlan, HistoryPlanItem, HistoryPlanSession } from '#lib/domain/history.ts';
import type { TeamPg } from './client.ts';

type Item = HistoryPlanItem;
type Session = HistoryPlanSession;
type PackedSession = [
  Session['label'],
  Session['restSeconds'],
  Session['warmUp'],
  Session['warmUpMinutes'],
  Session['minutes'],
];
type PackedItem = [
  Item['session'],
  Item['rungId'],
  Item['side'],
  Item['sets'],
  Item['target'],
  Item['minutes'],
  Item['timesPerWeek'],
  Item['support'],
  Item['stopRule'],
  Item['notTwoDaysRunning'],
  Item['pairedWith'],
  Item['noKitRungId'],
];
/** As packed_plan() in lib/db/sql/functions.sql writes it. */
type PackedPlan = [
  version: number,
  from: string,
  until: string | null,
  sessionsPerWeek: number,
  byId: string | null,
  why: string,
  notes: string,
  easyWeeks: string[],
  testWeeks: string[],
  noKitWeeks: string[],
  acceptedWeekAu: number | null,
  skillsInFocus: string[],
  sessions: PackedSession[],
  items: PackedItem[],
];

/** Keeps these clients' plans packed beside their rows, once all of these are written: a version does not change. */
export async function packPlans(tx: TeamPg, clientIds: string[]): Promise<void> {
  await tx.client.query('select pack_plans($1::uuid[])', [clientIds]);
}

/**
 * The plans of many clients, oldest version first, with their items, in one query. With `from`, those that can have held
 * on that date or later, and each client's first one, which says when the planning began.
 */
export async function listHistoryPlans(
  tx: TeamPg,
  clientIds: string[],
  from: (clientId: string) => string | null,
): Promise<Map<string, HistoryPlan[]>> {
  const [{ rows }, names] = await Promise.all([
    tx.client.query<{ clientId: string; plans: string }>(
      `select asked.id as "clientId", '[' || told.plans || ']' as plans
       from unnest($2::uuid[], $3::date[]) as asked(id, from_date)
       cross join lateral (select max(n.version) filter (where n.from_date <= asked.from_date) as held,
           min(n.version) as first
         from plan n where n.team_id = $1 and n.client_id = asked.id) which
       cross join lateral (select string_agg(coalesce(p.packed, packed_plan(p)), ',' order by p.version) as plans
         from plan p where p.team_id = $1 and p.client_id = asked.id and (asked.from_date is null
           or p.from_date >= asked.from_date or p.version >= which.held or p.version = which.first)) told
       where told.plans is not null`,
      [tx.teamId, clientIds, clientIds.map(from)],
    ),
    namesOfMembers(tx),
  ]);
  return new Map(
    rows.map(({ clientId, plans }) => {
      const packed: PackedPlan[] = JSON.parse(plans);
      return [clientId, packed.map((plan) => toPlan(plan, names))];
    }),
  );
}

async function namesOfMembers(tx: TeamPg): Promise<Map<string, string>> {
  const { rows } = await tx.client.query<{ id: string; name: string }>(
    'select id, name from member where team_id = $1',
    [tx.teamId],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}

function toPlan(packed: PackedPlan, names: ReadonlyMap<string, string>): HistoryPlan {
  const [version, from, until, sessionsPerWeek, byId, why, notes, easyWeeks, testWeeks, noKitWeeks] = packed;
  const [, , , , , , , , , , acceptedWeekAu, skillsInFocus, sessions, items] = packed;
  return {
    version,
    from,
    until,
    sessionsPerWeek,
    items: items.map(toItem),
    easyWeeks,
    testWeeks,
    acceptedWeekAu,
    skillsInFocus,
    noKitWeeks,
    sessions: sessions.map(toSession),
    by: byId === null ? null : (names.get(byId) ?? null),
    why,
    notes,
  };
}

function toSession([label, restSeconds, warmUp, warmUpMinutes, minutes]: PackedSession): Session {
  return { label, restSeconds, warmUp, warmUpMinutes, minutes };
}

function toItem(item: PackedItem): HistoryPlanItem {
  return {
    session: item[0],
    rungId: item[1],
    side: item[2],
    sets: item[3],
    target: item[4],
    minutes: item[5],
    timesPerWeek: item[6],
    support: item[7],
    stopRule: item[8],
    notTwoDaysRunning: item[9],
    pairedWith: item[10],
    noKitRungId: item[11],
  };
}
