import type { HistoryPlan, HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { oncePerView } from './once-per-view.ts';
import { plansThatHeld } from './plans-that-held.ts';
import { isOfSide } from './set-result.ts';
import type { ClientView } from './types.ts';

/** What the plan in force asks of a rung now, in sets; practice by minutes asks nothing that can be judged. */
export function askedNow(view: ClientView, rungId: string, side: Side): HistoryPlanItem[] {
  return (view.planOn(view.asOf.date)?.items ?? []).filter(
    (item) => item.rungId === rungId && item.target !== null && isOfSide(item, side),
  );
}

/** Whether an item asks the whole pass mark: its sets and its target. */
export function asksPassMark(item: HistoryPlanItem, rung: HistoryRung): boolean {
  if (item.target === null || item.sets < rung.pass.sets) return false;
  return rung.measure === 'range-down' ? item.target <= rung.pass.target : item.target >= rung.pass.target;
}

/** Since when the plans have had the rung without a break, seen from `date`; undefined when not planned then. */
export function plannedSince(view: ClientView, rungId: string, date: string): string | undefined {
  let since: string | undefined;
  for (const plan of inOrder(view)) {
    if (plan.from > date) break;
    const has = plan.items.some((item) => item.rungId === rungId);
    since = has ? (since ?? plan.from) : undefined;
  }
  return since;
}

/** The last date on which what the plans ask on a ladder changed; undefined when it never did. */
export function lastPlanChange(view: ClientView, ladderId: string): string | undefined {
  let asked: string | undefined;
  let changed: string | undefined;
  for (const plan of inOrder(view)) {
    if (plan.from > view.asOf.date) break;
    const now = askedText(view, plan, ladderId);
    if (asked !== undefined && asked !== now) changed = plan.from;
    asked = now;
  }
  return changed;
}

function askedText(view: ClientView, plan: HistoryPlan, ladderId: string): string {
  const items = plan.items.filter((item) => view.rungs.get(item.rungId)?.ladderId === ladderId);
  const text = (item: HistoryPlanItem) =>
    [item.session, item.rungId, item.side, item.sets, item.target, item.minutes].join(' ');
  return items.map(text).sort().join('; ');
}

const inOrder = oncePerView((view): HistoryPlan[] => plansThatHeld(view.history.plans));
