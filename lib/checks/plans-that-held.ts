import type { HistoryPlan } from '#lib/domain/history.ts';

/**
 * The plans in the order in which they came into force. The highest version that has begun holds: one that a later
 * version has overtaken before its first day never does, and is left out.
 */
export function plansThatHeld(plans: readonly HistoryPlan[]): HistoryPlan[] {
  const held: HistoryPlan[] = [];
  for (const plan of [...plans].sort((a, b) => b.version - a.version)) {
    const next = held.at(-1);
    if (next === undefined || plan.from < next.from) held.push(plan);
  }
  return held.reverse();
}
