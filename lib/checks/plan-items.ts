import type { HistoryPlan, HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { oncePerCheckIns, oncePerView } from './once-per-view.ts';
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
  const known = sinceByDate(view);
  let since = known.get(date);
  if (!since) {
    since = new Map<string, string>();
    for (const plan of inOrder(view)) {
      if (plan.from > date) break;
      since = rungsSince(plan, since);
    }
    known.set(date, since);
  }
  return since.get(rungId);
}

const sinceByDate = oncePerView(() => new Map<string, Map<string, string>>());

/** The rungs of a plan, each since it is planned without a break: as before, or from this plan on. */
function rungsSince(plan: HistoryPlan, before: ReadonlyMap<string, string>): Map<string, string> {
  const since = new Map<string, string>();
  for (const { rungId } of plan.items) since.set(rungId, before.get(rungId) ?? plan.from);
  return since;
}

/** The last date on which what the plans ask on a ladder changed; undefined when it never did. */
export function lastPlanChange(view: ClientView, ladderId: string): string | undefined {
  return planChanges(view).get(ladderId);
}

/** The same for every ladder on which it ever did. */
const planChanges = oncePerView((view) => {
  const changes = new Map<string, string>();
  let before: HistoryPlan | undefined;
  for (const plan of inOrder(view)) {
    if (plan.from > view.asOf.date) break;
    if (before) {
      for (const ladderId of laddersApart(view, before, plan)) {
        if (askedText(view, before, ladderId) !== askedText(view, plan, ladderId))
          changes.set(ladderId, plan.from);
      }
    }
    before = plan;
  }
  return changes;
});

/** Ladders of lines that do not stand equal at the same place: only these can ask something else. */
function laddersApart(view: ClientView, before: HistoryPlan, after: HistoryPlan): Set<string> {
  const ladders = new Set<string>();
  const most = Math.max(before.items.length, after.items.length);
  for (let at = 0; at < most; at += 1) {
    const [a, b] = [before.items[at], after.items[at]];
    if (a && b && asksTheSame(a, b)) continue;
    for (const item of [a, b]) {
      const ladderId = item && view.rungs.get(item.rungId)?.ladderId;
      if (ladderId !== undefined) ladders.add(ladderId);
    }
  }
  return ladders;
}

function asksTheSame(a: HistoryPlanItem, b: HistoryPlanItem): boolean {
  return (
    a.rungId === b.rungId &&
    a.session === b.session &&
    a.side === b.side &&
    a.sets === b.sets &&
    a.target === b.target &&
    a.minutes === b.minutes
  );
}

/** What a plan asks on a ladder, as one text whatever the order of its lines. */
function askedText(view: ClientView, plan: HistoryPlan, ladderId: string): string {
  const lines: string[] = [];
  for (const { session, rungId, side, sets, target, minutes } of plan.items) {
    if (view.rungs.get(rungId)?.ladderId !== ladderId) continue;
    lines.push(`${session} ${rungId} ${side} ${sets} ${target} ${minutes}`);
  }
  return lines.sort().join('; ');
}

const inOrder = oncePerCheckIns((view): HistoryPlan[] => plansThatHeld(view.history.plans));
