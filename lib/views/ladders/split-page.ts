import type { Measure, Tissue } from '#lib/domain/vocabulary.ts';
import { guessShape } from '#lib/planning/ladders/guess-shape.ts';
import { type DrillState, drillOf, type LadderState, liveRungs } from '#lib/planning/ladders/ladder-state.ts';
import type { LeverShape } from '#lib/planning/ladders/lever-shape.ts';
import { momentTissue } from '#lib/planning/ladders/moment-tissue.ts';
import { passMarkInWords } from '#lib/planning/ladders/pass-mark.ts';
import { weeksEach } from '#lib/planning/ladders/split-rung.ts';

export type SplitPage = {
  rungId: string;
  name: string;
  mark: string;
  measure: Measure;
  sets: string;
  target: string;
  days: string;
  tries: string;
  usualWeeks: number;
  /** The rung below, from which the steps start; null at the foot of the ladder. */
  below: { name: string; mark: string; target: string } | null;
  /** For a split by hip angle: the tissue that carries the moment and both shapes, as guessed. */
  shapes: { tissue: Tissue; weight: number; from: LeverShape | null; to: LeverShape | null } | null;
};

/** What a split of a rung starts from; undefined: no such rung in use. */
export function splitPage(ladder: LadderState, rungId: string): SplitPage | undefined {
  const live = liveRungs(ladder);
  const at = live.findIndex((rung) => rung.id === rungId);
  const rung = live[at];
  const drill = rung && drillOf(ladder, rung);
  if (!rung || !drill) return undefined;
  const below = live[at - 1];
  const drillBelow = below && drillOf(ladder, below);
  return {
    rungId,
    name: rung.name,
    mark: passMarkInWords(rung.pass, drill.measure),
    measure: drill.measure,
    sets: String(rung.pass.sets),
    target: String(rung.pass.target),
    days: String(rung.pass.days),
    tries: rung.pass.tries === null ? '' : String(rung.pass.tries),
    usualWeeks: rung.usualWeeks,
    below:
      below && drillBelow
        ? {
            name: below.name,
            mark: passMarkInWords(below.pass, drillBelow.measure),
            target: String(below.pass.target),
          }
        : null,
    shapes: shapesOf(drill, {
      name: rung.name,
      below: below && drillBelow && { name: below.name, drill: drillBelow },
    }),
  };
}

function shapesOf(
  drill: DrillState,
  about: { name: string; below: { name: string; drill: DrillState } | undefined },
): SplitPage['shapes'] {
  const tissue = momentTissue(drill.weights);
  const straightHold = drill.measure === 'hold' && tissue !== undefined;
  const to = straightHold ? guessShape(about.name, drill.weights[tissue]) : undefined;
  if (!straightHold || !to) return null;
  const from = about.below && guessShape(about.below.name, about.below.drill.weights[tissue]);
  return { tissue, weight: drill.weights[tissue] ?? 0, from: from ?? null, to };
}

/** "Each of 3 then usually takes 1.5 weeks." */
export function weeksAfterSplit(usualWeeks: number, count: number): string {
  const weeks = weeksEach(usualWeeks, count);
  return `Each of the ${count} then usually takes ${weeks === 1 ? '1 week' : `${weeks} weeks`}.`;
}
