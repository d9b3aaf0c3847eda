import type { HistoryRung } from '#lib/domain/history.ts';
import type { Family } from '#lib/domain/vocabulary.ts';
import { doseOf, type EditedItem, type EditedPlan, type EditedSession, sidesOfItem } from './edited-plan.ts';

/** Rest between two sets where the session says nothing, seconds. Common practice, no source. */
const REST_SECONDS: Readonly<Record<Family, number>> = {
  'bent-arm-push': 120,
  'bent-arm-pull': 120,
  'straight-arm-push': 120,
  'straight-arm-pull': 120,
  balance: 60,
  mobility: 30,
};
/** Getting into place and out again, for each set, seconds. Own choice. */
const SETTLE_SECONDS = 5;
/** One measuring of a range, seconds. Own choice. */
const RANGE_SECONDS = 30;
const MINUTE = 60;

export type SessionMinutes = { label: string; minutes: number };

/** Said beside every number of minutes. */
export const MINUTES_DOUBT = 'estimated from sets, targets and rests; common practice, no source';

/**
 * Minutes of each session of a plan, whole, in the order of the plan: sets x time under load and the rest after each,
 * or the minutes a line asks for, and the warm-up. Own estimate. Rungs that are not given count nothing.
 */
export function sessionMinutes(plan: EditedPlan, rungs: ReadonlyMap<string, HistoryRung>): SessionMinutes[] {
  const labels = [...new Set(plan.items.map((item) => item.session))];
  return labels.map((label) => {
    const session = plan.sessions?.find((one) => one.label === label);
    const items = plan.items.filter((item) => item.session === label);
    return { label, minutes: Math.round(minutesOfItems(items, session, rungs)) };
  });
}

/** Minutes of some lines done in one go, not rounded. */
export function minutesOfItems(
  items: readonly EditedItem[],
  session: EditedSession | undefined,
  rungs: ReadonlyMap<string, HistoryRung>,
): number {
  const seconds = items.reduce((sum, item) => {
    const rung = rungs.get(item.rungId);
    return sum + (rung ? itemSeconds(item, rung, session?.restSeconds ?? REST_SECONDS[rung.family]) : 0);
  }, 0);
  return seconds / MINUTE + (session?.warmUpMinutes ?? 0);
}

function itemSeconds(item: EditedItem, rung: HistoryRung, rest: number): number {
  if (item.minutes !== null) return item.minutes * MINUTE;
  return sidesOfItem(item, rung).length * item.sets * (workSeconds(item, rung) + SETTLE_SECONDS + rest);
}

/** Time of one planned set, seconds. */
function workSeconds(item: EditedItem, rung: HistoryRung): number {
  const { value, tries } = doseOf(item, rung);
  if (rung.measure === 'hold' || rung.measure === 'lowering') return Math.max(0, value);
  if (rung.measure === 'range-up' || rung.measure === 'range-down') return RANGE_SECONDS;
  return Math.max(0, tries ?? value) * (rung.secondsPerRep ?? 0);
}
