import { daysBetween } from '#lib/domain/local-date.ts';
import type { EditedItem, EditedPlan } from './edited-plan.ts';

const WEEK_DAYS = 7;

/** Whether a date lies in a week without kit; a week has seven days from the date it is named by. */
export function isWithoutKit(plan: { noKitWeeks?: readonly string[] | undefined }, date: string): boolean {
  return (plan.noKitWeeks ?? []).some((week) => {
    const day = daysBetween(week, date);
    return day >= 0 && day < WEEK_DAYS;
  });
}

/**
 * A line as it is done without kit: as it is when it needs none, else the rung that stands in for it at its pass mark,
 * in as many sets; undefined: it is left out.
 */
export function lineWithoutKit<Item extends EditedItem>(item: Item): Item | undefined {
  if (item.needsKit !== true) return item;
  if (!item.noKitRungId) return undefined;
  return { ...item, rungId: item.noKitRungId, target: null, support: null, pairedWith: null };
}

/** A plan as it is done in its weeks without kit. */
export function planWithoutKit(plan: EditedPlan): EditedPlan {
  return { ...plan, items: plan.items.flatMap((item) => lineWithoutKit(item) ?? []) };
}
