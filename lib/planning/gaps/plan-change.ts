import type { HistoryPlan } from '#lib/domain/history.ts';
import type { DrillOption } from './drill-options.ts';

/** How far a drill is from the plan in force: 0 the same rungs are in it, 1 another rung of the ladder, 2 not in it. */
export function changeFrom(
  plan: HistoryPlan | null,
  { ladder, lines }: DrillOption,
): { steps: 0 | 1 | 2; words: string } {
  const items = plan?.items ?? [];
  const here = items.filter((item) => ladder.rungs.some((rung) => rung.id === item.rungId));
  if (here.length === 0) return { steps: 2, words: plan ? 'new in the plan' : '' };
  const all = lines.every(({ rung, side }) =>
    here.some(
      (item) => item.rungId === rung.id && (side === 'both' || item.side === side || item.side === 'both'),
    ),
  );
  return all
    ? { steps: 0, words: 'already in the plan' }
    : { steps: 1, words: 'in the plan on another rung' };
}
