import type { Limits } from '#lib/checks/thresholds.ts';
import { emptyCheckIn } from '#lib/domain/empty-check-in.ts';
import type { ClientHistory, HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { easySets, type WeekKind } from './easy-week.ts';
import { doseOf, type EditedItem, sidesOfItem } from './edited-plan.ts';
import { limitOnItem, setsUnderLimit } from './limit-on-item.ts';
import type { PlannedSession } from './plan-calendar.ts';

/** Effort and minutes that a foreseen session is given; null where nothing tells them. */
export type Foreseen = { effort: number | null; minutes: number | null };

type Client = {
  history: Pick<ClientHistory, 'client' | 'limits'>;
  rungs: ReadonlyMap<string, HistoryRung>;
  limits: Limits;
};

/** A session done exactly as planned, as the check-in it would be. */
export function plannedCheckIn(
  session: PlannedSession,
  week: WeekKind,
  { effort, minutes }: Foreseen,
  client: Client,
): HistoryCheckIn {
  return {
    ...plannedRest(session.date, client.history.client.zone),
    id: `foreseen ${session.date} ${session.label}`,
    kind: 'training',
    session: session.label,
    effort,
    minutes,
    sets: session.items.flatMap((item) => plannedSets(item, week, session.date, client)),
  };
}

/** A day between, told as rest. */
export function plannedRest(date: string, zone: string): HistoryCheckIn {
  return emptyCheckIn({ id: `foreseen ${date} rest`, date, zone, sentAt: `${date}T20:00:00.000Z` });
}

/** The line as it is left in this week under the limits of this date; undefined when nothing is left of it. */
export function itemOnDate(
  item: EditedItem,
  week: WeekKind,
  date: string,
  { history, rungs, limits }: Client,
): EditedItem | undefined {
  const rung = rungs.get(item.rungId);
  if (!rung) return undefined;
  const effect = limitOnItem(history.limits, { rung, side: item.side, support: item.support }, date, limits);
  const sets = setsUnderLimit(week === 'easy' ? easySets(item.sets) : item.sets, effect);
  return sets > 0 ? { ...item, sets } : undefined;
}

function plannedSets(item: EditedItem, week: WeekKind, date: string, client: Client): HistorySet[] {
  const rung = client.rungs.get(item.rungId);
  if (!rung) return [];
  return sidesOfItem(item, rung).flatMap((side) => {
    const left = itemOnDate({ ...item, side }, week, date, client);
    return left ? setsOf(left, rung) : [];
  });
}

function setsOf(item: EditedItem, rung: HistoryRung): HistorySet[] {
  const { sets, value, tries } = doseOf(item, rung);
  return Array.from({ length: sets }, (_, index) => ({
    rungId: rung.id,
    side: item.side,
    index,
    planned: value,
    value,
    tried: tries,
    how: 'as-planned' as const,
    clean: true,
    faults: [],
    support: item.support ?? null,
    addedKg: null,
  }));
}
