import { tooManyGoals } from '#lib/checks/rules/too-many-goals.ts';
import { DEFAULT_LIMITS, type Limits } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import type { EditedPlan } from './edited-plan.ts';

/** What too-many-goals would say of a plan on its first day, in its own words; undefined: nothing. */
export function foreseenGoals(
  { history, plan, rungs }: { history: ClientHistory; plan: EditedPlan; rungs: readonly HistoryRung[] },
  limits: Limits = DEFAULT_LIMITS,
): string | undefined {
  const client: ClientHistory['client'] = { ...history.client, standing: 'in-training' };
  const alone = { ...history, client, rungs: [...rungs], plans: [plan], checkIns: [], absences: [] };
  const view = buildView(alone, { date: plan.from, instant: `${plan.from}T23:59:59.000Z` }, limits);
  for (const outcome of tooManyGoals.evaluate(view, limits)) {
    if (outcome.status === 'flagged') return outcome.sentence;
  }
  return undefined;
}
