import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { rungInWords } from '#lib/checks/words.ts';
import type { HistoryLimit, HistoryPlan, HistoryRung } from '#lib/domain/history.ts';
import { limitOnItem, setsUnderLimit } from '#lib/planning/limit-on-item.ts';

/** The lines of a plan that one limit takes out or cuts on a date: "Heel pull out", "Row 4 sets to 2". */
export function limitInPlan(
  limit: HistoryLimit,
  plan: HistoryPlan | undefined,
  rungs: ReadonlyMap<string, HistoryRung>,
  date: string,
): string[] {
  const lines = (plan?.items ?? []).flatMap((item) => {
    const rung = rungs.get(item.rungId);
    if (!rung) return [];
    const { side, support } = item;
    const effect = limitOnItem([limit], { rung, side, support }, date, DEFAULT_LIMITS);
    if (effect.limit === null) return [];
    const sets = setsUnderLimit(item.sets, effect);
    const name = rungInWords(rung, side);
    return [sets === 0 ? `${name} out` : `${name} ${item.sets} sets to ${sets}`];
  });
  return [...new Set(lines)];
}
