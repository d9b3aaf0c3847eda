import { weightsOnSupport } from '#lib/checks/supports.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';
import { type BodyState, notePain } from './body-state.ts';
import { type CoverScore, scoreOfAnswer } from './cover-program.ts';
import { type CoverHow, coversHow, type OpenPart } from './covered-by.ts';
import { factorsOf } from './drill-line.ts';
import { type DrillOption, drillOptions } from './drill-options.ts';
import { type Strain, strainCost, strainOf } from './drill-strain.ts';
import type { GapContext } from './gap-context.ts';
import { SORE_FROM } from './gap-numbers.ts';
import type { Ask, Assessment, PartStanding } from './gap-types.ts';
import { mobilityAskedBy, mobilityGivenBy } from './mobility-tissues.ts';
import { changeFrom } from './plan-change.ts';
import { type RuledOut, reducedByLimits, ruledOut } from './ruled-out.ts';
import { solveCover } from './solve-cover.ts';
import { standingOfPart } from './standing-of-part.ts';
import { isStrength, type Room, strengthRoom } from './strength-room.ts';
import { trainingRung } from './training-rung.ts';

/** A drill looked at, with all that decides about it. */
export type WeighedDrill = {
  option: DrillOption;
  covers: { part: OpenPart; how: CoverHow }[];
  gives: Tissue[];
  needs: Tissue[];
  strength: boolean;
  strain: Strain[];
  change: { steps: 0 | 1 | 2; words: string };
  out: RuledOut | undefined;
  /** The limit that left it fewer sets. */
  cutBy: HistoryLimit | undefined;
};

export type GapResult = {
  parts: PartStanding[];
  open: OpenPart[];
  chosen: WeighedDrill[];
  left: OpenPart[];
  /** Every drill that was looked at, also those ruled out. */
  weighed: WeighedDrill[];
  room: Room[];
  /** Parts left, drills, strain, change: what was made smallest, in this order. */
  score: CoverScore;
};

/**
 * Standing of every part of an assessment, and the fewest drills that cover the open ones. The same input gives the
 * same answer, whatever the order of the parts; nothing is chosen when nothing is open.
 */
export function findGaps(asks: readonly Ask[], assessment: Assessment, context: GapContext): GapResult {
  const parts = asks.map((ask) => standingOfPart(ask, seenOf(ask, assessment)));
  const open = parts.flatMap((part) => openSides(part));
  const asked = new Set(asks.map(({ ladder }) => ladder.id));
  const room = strengthRoom(assessment.sessions, context.plan, context.library, asked);
  const here = { ...context, body: withPartsPain(asks, assessment, context) };
  const weighed = drillOptions(asks, assessment, context).map((option) =>
    weigh(option, { parts, open, assessment, context: here }),
  );
  const able = weighed.filter(({ out }) => !out);
  const answer = solveCover({
    elements: open.length,
    mostStrength: room.reduce((sum, one) => sum + one.room, 0),
    candidates: able.map((drill) => ({
      key: drill.option.key,
      covers: drill.covers.map(({ part }) => open.indexOf(part)),
      strength: drill.strength,
      serves: drill.gives.map((tissue) => TISSUES.indexOf(tissue)),
      needs: drill.needs.map((tissue) => TISSUES.indexOf(tissue)),
      strain: strainCost(drill.strain),
      change: drill.change.steps,
    })),
  });
  return {
    parts,
    open,
    chosen: answer.chosen.flatMap((key) => able.find(({ option }) => option.key === key) ?? []),
    left: answer.uncovered.flatMap((element) => open[element] ?? []),
    weighed,
    room,
    score: scoreOfAnswer(answer),
  };
}

function seenOf({ ladder }: Ask, { parts }: Assessment) {
  return parts.find((part) => part.ladderId === ladder.id)?.sides ?? [];
}

/** Mobility comes along with drills; it is not to be covered by itself. */
function openSides({ ask, sides }: PartStanding): OpenPart[] {
  return ask.role === 'mobility'
    ? []
    : sides.flatMap(({ standing, seen }) => (standing === 'open' ? [{ ask, seen }] : []));
}

type Around = {
  parts: readonly PartStanding[];
  open: readonly OpenPart[];
  assessment: Assessment;
  context: GapContext;
};

function weigh(planned: DrillOption, { parts, open, assessment, context }: Around): WeighedDrill {
  const { option, cutBy } = reducedByLimits(planned, context);
  const loaded = context.numbers['tissue.loaded'];
  const rungs = option.lines.map(({ rung }) => ({
    family: rung.family,
    weights: weightsOnSupport(rung.weights, option.support),
  }));
  const ready = new Set(
    parts.filter(({ standing }) => standing === 'covered').flatMap(({ ask }) => mobilityGivenBy(ask.ladder)),
  );
  const only = (tissues: readonly Tissue[]) => TISSUES.filter((tissue) => tissues.includes(tissue));
  return {
    option,
    covers: open.flatMap((part) => {
      const how = coversHow(option, part, loaded);
      return how ? [{ part, how }] : [];
    }),
    gives: mobilityGivenBy(option.ladder),
    needs: only(rungs.flatMap(mobilityAskedBy)).filter(
      (tissue) => !ready.has(tissue) && isPrepared(tissue, context),
    ),
    strength: option.lines.some(({ rung }) => isStrength(rung.family)),
    strain: strainOf(option, context.body, context.bodyMassKg),
    change: changeFrom(context.plan, option),
    out: ruledOut(option, assessment, context),
    cutBy,
  };
}

/** Whether the team's ladders have any mobility for a tissue. */
function isPrepared(tissue: Tissue, { library }: GapContext): boolean {
  return library.some((ladder) => mobilityGivenBy(ladder).includes(tissue));
}

/** The body as the history tells it, with the pain written into the assessment on the tissues that the part loads. */
function withPartsPain(asks: readonly Ask[], assessment: Assessment, context: GapContext): BodyState {
  const body = new Map(context.body);
  for (const { ladder } of asks) {
    for (const seen of assessment.parts.find((part) => part.ladderId === ladder.id)?.sides ?? []) {
      const rung = trainingRung(ladder, seen);
      if (!rung || (seen.pain ?? 0) < SORE_FROM) continue;
      for (const { key, tissue } of factorsOf({ rung, side: seen.side }, null, null))
        if ((rung.weights[tissue] ?? 0) >= context.numbers['tissue.loaded'])
          notePain(body, key, { pain: seen.pain ?? 0, where: ladder.part });
    }
  }
  return body;
}
