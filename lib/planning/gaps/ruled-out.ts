import { weightsOnSupport } from '#lib/checks/supports.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { kitMissing } from '#lib/domain/kit.ts';
import { limitOnItem, setsUnderLimit } from '../limit-on-item.ts';
import { openingsUpTo } from './asks-of-skill.ts';
import { type BodyState, tissueSideInWords } from './body-state.ts';
import { factorsOf } from './drill-line.ts';
import type { DrillOption } from './drill-options.ts';
import type { GapContext } from './gap-context.ts';
import { STOP_FROM } from './gap-numbers.ts';
import type { Assessment, GapOpening, PartSeen } from './gap-types.ts';
import { hasPassed } from './training-rung.ts';

/** Why a drill cannot be done now, as the end of a sentence; with the limit, where one says so. */
export type RuledOut = {
  kind: 'kit' | 'opening' | 'limit' | 'pain';
  words: string;
  limit?: HistoryLimit | undefined;
};

/** Undefined: nothing keeps the client from this drill. */
export function ruledOut(
  option: DrillOption,
  assessment: Assessment,
  context: GapContext,
): RuledOut | undefined {
  return (
    missingKit(option, assessment) ??
    closed(option, assessment, context) ??
    underLimit(option, context) ??
    tooSore(option, context.body, context)
  );
}

/** The drill with the sets that a limit of "reduced" leaves of its lines, and that limit. */
export function reducedByLimits(
  option: DrillOption,
  context: GapContext,
): { option: DrillOption; cutBy: HistoryLimit | undefined } {
  let cutBy: HistoryLimit | undefined;
  const lines = option.lines.map((line) => {
    const effect = limitOnItem(
      context.limits,
      { ...line, support: option.support },
      context.date,
      context.numbers,
    );
    if (effect.share <= 0 || effect.share >= 1) return line;
    cutBy = effect.limit ?? cutBy;
    return { ...line, sets: setsUnderLimit(line.sets, effect) };
  });
  return { option: { ...option, lines }, cutBy };
}

function missingKit({ lines, support }: DrillOption, { kit }: Assessment): RuledOut | undefined {
  const atHand = support ? [...kit, support] : kit;
  const missing = lines.flatMap(({ rung }) => kitMissing(rung.equipment, atHand) ?? [])[0];
  return missing ? { kind: 'kit', words: `asks for ${missing}, which is not at hand` } : undefined;
}

function closed(
  { ladder, lines, support }: DrillOption,
  assessment: Assessment,
  context: GapContext,
): RuledOut | undefined {
  const seen = assessment.parts.find((part) => part.ladderId === ladder.id);
  for (const { rung } of lines) {
    for (const opening of openingsUpTo({ ladder, rung })) {
      if (opening.under18CoachTick && context.under18 && !assessment.under18Allowed)
        return { kind: 'opening', words: 'opens under 18 only when the coach allows it' };
      if (support && opening.orOnSupports.includes(support)) continue;
      if (trainsBeyond(ladder.rungs, opening, seen)) continue;
      if (isUnmet(opening, assessment.parts, context))
        return { kind: 'opening', words: `is not open yet: ${opening.words}` };
    }
  }
  return undefined;
}

/** A coach has put the client at or past what opens: that stands. */
function trainsBeyond(
  rungs: readonly { id: string; key: string | null; position: number }[],
  { opens }: GapOpening,
  seen: PartSeen | undefined,
): boolean {
  const from = rungs.find((rung) => rung.key === opens)?.position ?? Number.POSITIVE_INFINITY;
  return (seen?.sides ?? []).some(
    ({ rungId }) => (rungs.find((rung) => rung.id === rungId)?.position ?? -1) >= from,
  );
}

/** Only what is known not to stand keeps a rung closed. */
function isUnmet({ needsAll }: GapOpening, parts: readonly PartSeen[], { library }: GapContext): boolean {
  return needsAll.some((any) => {
    const known = any.map((key) => {
      const ladder = library.find(({ rungs }) => rungs.some((rung) => rung.key === key));
      const rung = ladder?.rungs.find((one) => one.key === key);
      const sides = parts.find((part) => part.ladderId === ladder?.id)?.sides ?? [];
      return ladder && rung ? hasPassed(ladder, rung, sides) : 'not-known';
    });
    return known.length > 0 && known.every((each) => each === 'no');
  });
}

function underLimit({ lines, support }: DrillOption, context: GapContext): RuledOut | undefined {
  for (const line of lines) {
    const { share, limit } = limitOnItem(context.limits, { ...line, support }, context.date, context.numbers);
    if (limit && share <= 0) return { kind: 'limit', words: 'is ruled out by a limit', limit };
  }
  return undefined;
}

function tooSore(
  { lines, support }: DrillOption,
  body: BodyState,
  context: GapContext,
): RuledOut | undefined {
  for (const line of lines) {
    const weights = weightsOnSupport(line.rung.weights, support);
    for (const { key, tissue } of factorsOf(line, support, context.bodyMassKg)) {
      if ((weights[tissue] ?? 0) < context.numbers['tissue.loaded']) continue;
      const state = body.get(key);
      if (state && state.pain >= STOP_FROM)
        return {
          kind: 'pain',
          words: `loads the ${tissueSideInWords(key)}, where pain was ${state.pain} of 10 (${state.where}): stop that work and see a licensed clinician`,
        };
    }
  }
  return undefined;
}
