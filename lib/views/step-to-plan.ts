import { dayInWords } from '#lib/checks/words.ts';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import type { PlanStage, StepDraft } from '#lib/planning/steps/step-types.ts';
import type { PlanDraft, PlanDraftLine } from './plan-draft.ts';
import { sidesTogether } from './plan-rows.ts';

type Items = readonly HistoryPlanItem[];

/**
 * The first version of a proposed step as lines for the plan editor: what is new or dosed anew is put, what is gone and
 * has nothing in its place is dropped. Of a pyramid both rungs are put: the new one beside, naming its partner.
 * Undefined: nothing in the plan would change.
 */
export function draftToPlan(draft: StepDraft, before: Items, reasonId: string): PlanDraft | undefined {
  const [stage, ...after] = draft.stages;
  if (!stage) return undefined;
  const gone = before.filter((item) => !isThere(item, stage.items));
  const puts = stage.items
    .filter((item) => !isSame(item, before))
    .map((item) => ({
      ...lineOf(item, 'put', stage.why),
      replaces: replacedBy(item, { before, gone, stage }),
    }));
  const drops = gone
    .filter((item) => !puts.some((line) => line.replaces === item.rungId && isBeside(line, item)))
    .map((item) => lineOf(item, 'drop', ''));
  const lines = [...sidesTogether(puts), ...sidesTogether(drops)];
  if (lines.length + draft.dropSkills.length === 0) return undefined;
  const { words: notes, dropSkills } = draft;
  const later = [
    ...after.map(({ from, why }) => `from ${dayInWords(from)} ${why.replace(/^As /, 'as ')}`),
    ...(draft.film ? [`a film asked for by ${dayInWords(draft.film.byDate)}`] : []),
  ];
  return { source: 'reason', reasonId, lines, why: stage.why, notes, dropSkills, easyWeeks: [], later };
}

/** The rung whose line a new one takes the place of; its own where it is there already, null where it stands beside. */
function replacedBy(
  item: HistoryPlanItem,
  at: { before: Items; gone: Items; stage: PlanStage },
): string | null {
  if (isThere(item, at.before)) return item.rungId;
  return at.gone.find((one) => one.rungId === at.stage.rungId && isBeside(one, item))?.rungId ?? null;
}

type Place = Pick<PlanDraftLine, 'session' | 'side'>;

function isBeside(a: Place, b: Place): boolean {
  return a.session === b.session && (a.side === b.side || a.side === 'both' || b.side === 'both');
}

function lineOf(item: HistoryPlanItem, act: PlanDraftLine['act'], why: string): PlanDraftLine {
  const { session, rungId, side, sets, target, minutes, timesPerWeek, pairedWith } = item;
  return { act, session, rungId, side, sets, target, minutes, timesPerWeek, pairedWith, why };
}

function isThere(item: HistoryPlanItem, others: Items): boolean {
  return others.some((one) => placeOf(one) === placeOf(item));
}

function isSame(item: HistoryPlanItem, before: Items): boolean {
  return before.some((one) => placeOf(one) === placeOf(item) && doseOf(one) === doseOf(item));
}

function placeOf({ session, rungId, side }: HistoryPlanItem): string {
  return `${session} ${rungId} ${side}`;
}

function doseOf({ sets, target, minutes }: HistoryPlanItem): string {
  return `${sets} ${target} ${minutes}`;
}
