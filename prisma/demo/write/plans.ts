import { randomUUID } from 'node:crypto';
import type { TeamPg } from '#lib/db/client.ts';
import { packPlans } from '#lib/db/history-plans.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';
import type { DemoClient } from '../life.ts';
import { insertRows } from './insert.ts';
import { coachOf, idOf, type Place } from './place.ts';

type Written = { id: string; client: DemoClient; plan: HistoryPlan; sessions: Map<string, string> };

/** Every version of every plan with its sessions and lines, and where each client stood on each ladder. */
export async function writePlans(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  const plans: Written[] = clients.flatMap((client) =>
    client.history.plans.map((plan) => ({
      id: randomUUID(),
      client,
      plan,
      sessions: new Map(
        [...new Set(plan.items.map((item) => item.session))].map((label) => [label, randomUUID()]),
      ),
    })),
  );
  await insertRows(
    tx,
    'plan',
    {
      id: 'uuid',
      client_id: 'uuid',
      by_id: 'uuid',
      version: 'int',
      from_date: 'date',
      until_date: 'date',
      sessions_per_week: 'int',
      why: 'text',
      notes: 'text',
      easy_weeks: 'date[]',
      test_weeks: 'date[]',
      skills_in_focus: 'text[]',
      created_at: 'timestamptz',
    },
    plans.map(({ id, client, plan }) => ({
      id,
      client_id: client.history.client.id,
      by_id: coachOf(place, client),
      version: plan.version,
      from_date: plan.from,
      until_date: plan.until,
      sessions_per_week: plan.sessionsPerWeek,
      why: client.extra.planWhy.get(plan.version) ?? '',
      notes: '',
      easy_weeks: plan.easyWeeks,
      test_weeks: plan.testWeeks,
      skills_in_focus: plan.skillsInFocus,
      created_at: `${plan.from}T05:00:00Z`,
    })),
  );
  await insertRows(
    tx,
    'plan_session',
    {
      id: 'uuid',
      plan_id: 'uuid',
      label: 'text',
      position: 'int',
      warm_up: 'text',
      minutes: 'int',
      rest_seconds: 'int',
    },
    plans.flatMap(({ id, client, sessions }) =>
      [...sessions].map(([label, sessionId], place) => ({
        id: sessionId,
        plan_id: id,
        label,
        position: place + 1,
        warm_up: 'Wrists, shoulders, two easy holds.',
        minutes: client.extra.sessionMinutes,
        rest_seconds: 120,
      })),
    ),
  );
  await writeItems(tx, plans, place);
  await packPlans(
    tx,
    clients.map(({ history }) => history.client.id),
  );
  await writePlacements(tx, clients, place);
}

async function writeItems(tx: TeamPg, plans: Written[], place: Place): Promise<void> {
  await insertRows(
    tx,
    'plan_item',
    {
      session_id: 'uuid',
      rung_id: 'uuid',
      side: 'text',
      position: 'int',
      sets: 'int',
      target: 'float8',
      minutes: 'float8',
      times_per_week: 'float8',
      stop_rule: 'text',
      not_two_days_running: 'boolean',
    },
    plans.flatMap(({ plan, sessions }) =>
      plan.items.map((item, index) => ({
        session_id: sessions.get(item.session),
        rung_id: idOf(place.rungIds, item.rungId),
        side: item.side,
        position: index + 1,
        sets: item.sets,
        target: item.target,
        minutes: item.minutes,
        times_per_week: item.timesPerWeek,
        stop_rule: 'Stop a set when the shape goes.',
        not_two_days_running: false,
      })),
    ),
  );
}

async function writePlacements(tx: TeamPg, clients: DemoClient[], place: Place): Promise<void> {
  await insertRows(
    tx,
    'placement',
    {
      client_id: 'uuid',
      ladder_id: 'uuid',
      rung_id: 'uuid',
      side: 'text',
      from_date: 'date',
      why: 'text',
      created_at: 'timestamptz',
    },
    clients.flatMap(({ history, extra }) =>
      history.placements.map((placement) => ({
        client_id: history.client.id,
        ladder_id: idOf(place.ladderIds, placement.ladderId),
        rung_id: idOf(place.rungIds, placement.rungId),
        side: placement.side,
        from_date: placement.from,
        why: extra.placementWhy.get(`${placement.ladderId} ${placement.side} ${placement.from}`) ?? '',
        created_at: `${placement.from}T05:00:00Z`,
      })),
    ),
  );
}
