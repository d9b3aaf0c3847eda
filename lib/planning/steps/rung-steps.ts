import { passInWords, rungInWords } from '#lib/checks/words.ts';
import type { HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { type Dose, PRACTICE, proposeDose, proposePyramid } from '../dose.ts';
import { estimateInWords, estimateOnRung } from '../estimate-on-rung.ts';
import { isLineOf, lineInWords, onRung, resultsOn, rungBeside, rungOf } from './change-rung.ts';
import { changedPlan, type RungChange } from './changed-plan.ts';
import { filmOf } from './other-steps.ts';
import { type DraftReason, NOTHING, type StepContext, type StepDraft } from './step-types.ts';

const WEAK_SETS = 3;
const STRONG_SETS = 2;

/** The next rung with its first dose, beside the one before where that is held long enough. */
export function stepUp(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf(reason, context);
  const next = at && rungBeside(at.rung, 1, context);
  if (!at || !next) return { ...NOTHING, does: ['This was the last rung of its ladder: the plan stays.'] };
  const { rung, side } = at;
  if (!isPlanned(at, context)) return notPlanned(at);
  const isTrained = isPlanned({ rung: next, side }, context);
  const pyramid = isTrained ? undefined : proposePyramid(rung, next, resultsOn(rung, side, context));
  const dose = pyramid?.harder ?? proposeDose(next, isTrained ? resultsOn(next, side, context) : []);
  const change = (item: HistoryPlanItem): HistoryPlanItem[] => {
    const up = onRung(item, next, dose);
    if (!pyramid || item.target === null) return [up];
    const { sets, target } = pyramid.easier;
    return [
      { ...item, sets, target, pairedWith: next.id },
      { ...up, pairedWith: rung.id },
    ];
  };
  const beside = pyramid ? `, beside ${lineInWords(rung, side, pyramid.easier)}` : '';
  const said = `${lineInWords(next, side, dose)}${beside}`;
  const { stages, out } = changed(context, { rung, side, way: 'up', change }, `Step up: ${said}`);
  return {
    ...NOTHING,
    stages,
    does: [`From today ${said} (${PRACTICE}).`, ...out, ...estimated(next, side, context)],
    words: `You met the pass mark of ${rungInWords(rung, side)}. From today: ${said}. Clean sets only; tell me when something hurts.`,
  };
}

/** One rung back, where the planned sets are clean every time. */
export function oneBack(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf(reason, context);
  const before = at && rungBeside(at.rung, -1, context);
  if (!at || !before)
    return { ...NOTHING, does: ['There is no easier rung on this ladder: split this one.'] };
  const { rung, side } = at;
  if (!isPlanned(at, context)) return notPlanned(at);
  const dose = doseBelow(before, side, context);
  const said = lineInWords(before, side, dose);
  const change = (item: HistoryPlanItem) => [onRung(item, before, dose)];
  const { stages, out } = changed(context, { rung, side, way: 'back', change }, `One rung back: ${said}`);
  return {
    ...NOTHING,
    stages,
    does: [`From today ${said}, in place of ${rungInWords(rung, side)} (${PRACTICE}).`, ...out],
    words: `From today one step back: ${said}. Take the time there until every set is clean; then we go up again.`,
  };
}

/** The weak side one rung back, the strong side held at the weak side's number; and a film of the base from behind. */
export function oneSideBack(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf({ ...reason, subject: { ...reason.subject, side: 'both' } }, context);
  const weak = reason.evidence.side === 'left' ? 'left' : 'right';
  const strong = weak === 'left' ? 'right' : 'left';
  const before = at && rungBeside(at.rung, -1, context);
  if (!at || !before)
    return { ...NOTHING, does: ['There is no easier rung on this ladder: split this one.'] };
  const { rung } = at;
  if (!isPlanned(at, context)) return notPlanned(at);
  const back = { ...doseBelow(before, weak, context), sets: WEAK_SETS };
  const number = median(
    resultsOn(rung, weak, context)
      .slice(0, 3)
      .flatMap(({ values }) => values),
  );
  const held = { sets: STRONG_SETS, target: Math.max(1, Math.round(number ?? rung.pass.target)) };
  const change = (item: HistoryPlanItem): HistoryPlanItem[] => {
    const sides = item.side === 'both' ? (['left', 'right'] as const) : [item.side];
    return sides.map((side) =>
      side === weak ? onRung({ ...item, side }, before, back) : onRung({ ...item, side }, rung, held),
    );
  };
  const said = `${lineInWords(before, weak, back)}; ${lineInWords(rung, strong, held)}`;
  const film = filmOf(rung, weak, context, 'from behind, so that hand, shoulder and hip show');
  const why = `${weak} one rung back: ${said}`;
  const { stages, out } = changed(context, { rung, side: 'both', way: 'back', change }, why);
  return {
    ...NOTHING,
    stages,
    film,
    does: [`From today ${said} (${PRACTICE}).`, ...out, `A film asked for: ${film.words}`],
    words: `From today: ${said}. The ${strong} side waits for the ${weak} one. ${film.words}`,
  };
}

/** The whole pass mark where the plan asks for less. */
export function askPassMark(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf(reason, context);
  if (!at) return NOTHING;
  const { rung, side } = at;
  if (!isPlanned(at, context)) return notPlanned(at);
  const said = `${rungInWords(rung, side)}, ${passInWords(rung)}`;
  const { sets, target } = rung.pass;
  const change = (item: HistoryPlanItem) => [{ ...item, sets, target: item.target === null ? null : target }];
  return {
    ...NOTHING,
    stages: changed(context, { rung, side, way: 'stay', change }, `The pass mark: ${said}`).stages,
    does: [`From today ${said}.`],
    words: `What was planned has become easy. From today: ${said}, which is the pass mark.`,
  };
}

type At = Pick<RungChange, 'rung' | 'side'>;

function isPlanned({ rung, side }: At, { plan }: StepContext): boolean {
  return plan?.items.some((item) => isLineOf(item, rung, side)) === true;
}

function notPlanned({ rung, side }: At): StepDraft {
  return { ...NOTHING, does: [`The plan has no line of ${rungInWords(rung, side)}: write it in the plan.`] };
}

/** A version with the lines of a rung changed, and in words which half of a pyramid goes out with it. */
function changed(
  { plan, rungs, today }: StepContext,
  change: RungChange,
  why: string,
): Pick<StepDraft, 'stages'> & {
  out: string[];
} {
  const { items, out } = changedPlan(plan?.items ?? [], rungs, change);
  const half = change.way === 'up' ? 'easier' : 'harder';
  return {
    stages: [{ from: today, items, why, rungId: change.rung.id }],
    out: out.map((id) => `${rungs.get(id)?.name ?? 'A rung'}, the ${half} half of the pyramid, goes out.`),
  };
}

function doseBelow(before: HistoryRung, side: Side, context: StepContext): Dose {
  const results = resultsOn(before, side, context);
  return results.length > 0
    ? proposeDose(before, results)
    : { sets: before.pass.sets, target: before.pass.target };
}

/** For strength holds whose weights follow the moment: what is made of the next rung, with its doubt. */
function estimated(next: HistoryRung, side: Side, { view, rungs }: StepContext): string[] {
  const found = estimateOnRung(next, side, { view, rungs: rungs.values() });
  return found ? [estimateInWords(found, next)] : [];
}
