import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import type { EditedPlan } from '#lib/planning/edited-plan.ts';
import { lineWithoutKit } from '#lib/planning/without-kit.ts';
import { limitInPlan } from './limit-in-plan.ts';
import { limitInWords, untilInWords } from './limit-lines.ts';

const WEEK_DAYS = 7;

/**
 * What a plan asks that a limit, a week without kit or the client's age does not allow, in plain sentences. It is said,
 * never refused: the phone leaves out or swaps what a limit rules out.
 */
export function planDoubts(
  plan: EditedPlan,
  rungs: ReadonlyMap<string, HistoryRung>,
  history: Pick<ClientHistory, 'client' | 'limits'>,
): string[] {
  return [...limitDoubts(plan, rungs, history), ...kitDoubts(plan, rungs), ...restDoubts(plan, history)];
}

function limitDoubts(
  plan: EditedPlan,
  rungs: ReadonlyMap<string, HistoryRung>,
  { limits }: Pick<ClientHistory, 'limits'>,
): string[] {
  return limits.flatMap((limit) => {
    const touched = limitInPlan(limit, plan, rungs, plan.from);
    if (touched.length === 0) return [];
    return [
      `Limit in force, ${untilInWords(limit, plan.from)}: ${limitInWords(limit)}. On the phone: ${touched.join(', ')}, with a swap beside where there is one.`,
    ];
  });
}

function kitDoubts(plan: EditedPlan, rungs: ReadonlyMap<string, HistoryRung>): string[] {
  if ((plan.noKitWeeks ?? []).length === 0) return [];
  const out = plan.items.filter((item) => lineWithoutKit(item) === undefined);
  const names = [...new Set(out.map(({ rungId }) => rungs.get(rungId)?.name ?? 'a drill'))];
  return names.length === 0
    ? []
    : [`Left out in weeks without kit: ${names.join(', ')}. A stand-in can be named for each.`];
}

/** One full rest day a week under 18. Common practice, no source. */
function restDoubts(plan: EditedPlan, { client }: Pick<ClientHistory, 'client'>): string[] {
  return client.under18 && plan.sessionsPerWeek >= WEEK_DAYS
    ? ['Under 18: one full rest day a week. This plan trains every day.']
    : [];
}
