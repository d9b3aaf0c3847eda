import { weightsOnSupport } from '#lib/checks/supports.ts';
import { tissuesOfRegion } from '#lib/checks/tissues.ts';
import { dayInWords } from '#lib/checks/words.ts';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { PRACTICE } from '../dose.ts';
import { type DraftReason, NOTHING, type PlanStage, type StepContext, type StepDraft } from './step-types.ts';

type Cut = { share: number; days: number };

/** After too much: less for a week, most of it for another, then as before. Common practice, no source. */
const AFTER_LOAD: readonly Cut[] = [
  { share: 0.6, days: 7 },
  { share: 0.8, days: 7 },
];
/** For a sore place: half for two weeks, three quarters for one, then as before. Common practice, no source. */
const AFTER_PAIN: readonly Cut[] = [
  { share: 0.5, days: 14 },
  { share: 0.75, days: 7 },
];

/**
 * Fewer sets of the same drills for some weeks, then back in steps: versions of the plan, one for each step. About a
 * place: only the drills that load it with 0.3 or more; otherwise all but mobility. No line of that kind: nothing.
 */
export function cutVolume(reason: DraftReason, context: StepContext): StepDraft {
  const { plan, today } = context;
  const tissues = placeOf(reason);
  const isCut = (item: HistoryPlanItem) => isLineCut(item, tissues, context);
  if (!plan?.items.some(isCut)) return { ...NOTHING, does: ['The plan has nothing that could be cut here.'] };
  const cuts = tissues.length > 0 ? AFTER_PAIN : AFTER_LOAD;
  let from = today;
  const stages = [...cuts, { share: 1, days: 0 }].flatMap(({ share, days }): PlanStage[] => {
    const start = from;
    from = addDays(from, days);
    if (plan.until !== null && plan.until < start) return [];
    const why = share === 1 ? 'As before the cut' : `${asPercent(share)} of the sets, to come back in steps`;
    const items = plan.items.map((item) => (isCut(item) ? reduced(item, share) : item));
    return [{ from: start, items, why }];
  });
  const what =
    tissues.length > 0 ? `the drills that load the ${reason.subject.label}` : 'all drills but mobility';
  const steps = cuts
    .map(({ share, days }, at) => `${asPercent(share)}${at === 0 ? ' of the sets' : ''} for ${days} days`)
    .join(', then ');
  const last = stages.at(-1);
  const back = last?.why.startsWith('As') ? `, then as before from ${dayInWords(last.from)}` : '';
  return {
    ...NOTHING,
    stages,
    does: [`From today less of ${what}: ${steps}${back} (${PRACTICE}).`],
    words: `From today less of ${what}: ${steps}${back}. The drills stay the same. Tell me how it feels the morning after.`,
  };
}

/** The tissues a reason is about; none: the whole client. */
function placeOf({ subject }: DraftReason): readonly Tissue[] {
  if (subject.tissue) return [subject.tissue];
  return subject.region ? tissuesOfRegion(subject.region) : [];
}

function isLineCut(
  { rungId, support }: HistoryPlanItem,
  tissues: readonly Tissue[],
  { rungs, limits }: StepContext,
): boolean {
  const rung = rungs.get(rungId);
  if (!rung) return false;
  if (tissues.length === 0) return rung.family !== 'mobility';
  const weights = weightsOnSupport(rung.weights, support ?? null);
  return tissues.some((tissue) => (weights[tissue] ?? 0) >= limits['tissue.loaded']);
}

function reduced(item: HistoryPlanItem, share: number): HistoryPlanItem {
  return {
    ...item,
    sets: Math.max(1, Math.round(item.sets * share)),
    minutes: item.minutes === null ? null : Math.max(1, Math.round(item.minutes * share)),
  };
}

function asPercent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
