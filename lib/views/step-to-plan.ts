import type { HistoryPlanItem } from '#lib/domain/history.ts';
import type { StepDraft } from '#lib/planning/steps/step-types.ts';
import type { PlanDraft, PlanDraftLine } from './plan-draft.ts';

/**
 * The first version of a proposed step as lines for the plan editor: what is new or dosed anew is put, what is gone is
 * dropped. Of a pyramid only the harder rung is put: a put takes the place of its ladder's line, and the easier one is
 * named in the reason. Undefined: nothing in the plan would change.
 */
export function draftToPlan(
  draft: StepDraft,
  before: readonly HistoryPlanItem[],
  reasonId: string,
): PlanDraft | undefined {
  const [stage] = draft.stages;
  if (!stage) return undefined;
  const isThere = (item: HistoryPlanItem, others: readonly HistoryPlanItem[]) =>
    others.some((one) => placeOf(one) === placeOf(item));
  const isSame = (item: HistoryPlanItem) =>
    before.some((one) => placeOf(one) === placeOf(item) && doseOf(one) === doseOf(item));
  const puts = stage.items.filter((item) => !isSame(item) && !(item.pairedWith && isThere(item, before)));
  // A put takes the place of what it replaces: only where nothing is put is something to be taken out.
  const drops = puts.length > 0 ? [] : before.filter((item) => !isThere(item, stage.items));
  const line = (act: PlanDraftLine['act']) => (item: HistoryPlanItem) => ({
    act,
    session: item.session,
    rungId: item.rungId,
    side: item.side,
    sets: item.sets,
    target: item.target,
    minutes: item.minutes,
    timesPerWeek: item.timesPerWeek,
    why: act === 'put' ? stage.why : '',
  });
  const lines = [...puts.map(line('put')), ...drops.map(line('drop'))];
  if (lines.length + draft.dropSkills.length === 0) return undefined;
  return {
    source: 'reason',
    reasonId,
    lines,
    why: stage.why,
    notes: draft.words,
    dropSkills: draft.dropSkills,
    easyWeeks: [],
  };
}

function placeOf({ session, rungId, side }: HistoryPlanItem): string {
  return `${session} ${rungId} ${side}`;
}

function doseOf({ sets, target, minutes }: HistoryPlanItem): string {
  return `${sets} ${target} ${minutes}`;
}
