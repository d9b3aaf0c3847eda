import type { Side, Support } from '#lib/domain/vocabulary.ts';
import { isAtHand, openingsUpTo } from './asks-of-skill.ts';
import type { DrillLine } from './drill-line.ts';
import { firstDose } from './first-dose.ts';
import type { GapContext } from './gap-context.ts';
import type { Ask, Assessment, GapLadder, GapRung, PartSeen, SideSeen } from './gap-types.ts';
import { mobilityAskedBy, mobilityGivenBy } from './mobility-tissues.ts';
import { rungBefore, trainingRung } from './training-rung.ts';

/** One way to do a drill now: on which rungs, on which support. */
export type DrillOption = {
  /** Order of the library, then the rung itself before the one back, then the supports. */
  key: string;
  ladder: GapLadder;
  lines: DrillLine[];
  support: Support | null;
  oneBack: boolean;
};

/**
 * Every drill worth a thought: of the ladders asked about, of other ladders of the same parts, and of mobility for the
 * tissues they load; each on the rung to train and one rung back, on each support at hand that changes its load.
 */
export function drillOptions(
  asks: readonly Ask[],
  assessment: Assessment,
  context: GapContext,
): DrillOption[] {
  const parts = new Set(asks.map(({ ladder }) => ladder.partId));
  const tissues = new Set(asks.flatMap(({ ladder }) => ladder.rungs.flatMap(mobilityAskedBy)));
  const seenOn = new Map(assessment.parts.map((part) => [part.ladderId, part]));
  return context.library.flatMap((ladder, at) => {
    const prepares = mobilityGivenBy(ladder).some((tissue) => tissues.has(tissue));
    if (!parts.has(ladder.partId) && !prepares) return [];
    return optionsOf(ladder, { at, seen: seenOn.get(ladder.id), kit: assessment.kit }, context);
  });
}

type Place = { at: number; seen: PartSeen | undefined; kit: readonly string[] };

function optionsOf(ladder: GapLadder, { at, seen, kit }: Place, context: GapContext): DrillOption[] {
  const sides = seen?.sides ?? placedOn(ladder, context);
  const forward = sides.flatMap((one) => lineOf(trainingRung(ladder, one), one));
  const back = sides.flatMap((one) => {
    const rung = trainingRung(ladder, one);
    return lineOf((rung && rungBefore(ladder, rung)) ?? undefined, one);
  });
  const ways = [evenSides(forward), back.length === sides.length ? evenSides(back) : []];
  return ways.flatMap((lines, oneBack) =>
    lines.length === 0
      ? []
      : supportsFor(ladder, lines, kit).map((support, order) => ({
          key: `${String(at).padStart(4, '0')}.${oneBack}.${order} ${ladder.id}`,
          ladder,
          lines,
          support,
          oneBack: oneBack === 1,
        })),
  );
}

function lineOf(rung: GapRung | undefined, seen: SideSeen): DrillLine[] {
  if (!rung) return [];
  return [{ rung, side: rung.eachSide ? seen.side : 'both', ...firstDose(rung, seen) }];
}

/** The two sides of a rung for both at once are one line: the lower rung's, or the smaller target's. */
function evenSides(lines: readonly DrillLine[]): DrillLine[] {
  const [first, second] = lines;
  if (!first || !second || (first.rung.eachSide && second.rung.eachSide)) return [...lines];
  const lower =
    first.rung.position !== second.rung.position
      ? first.rung.position < second.rung.position
      : (first.target ?? 0) <= (second.target ?? 0);
  return [{ ...(lower ? first : second), side: 'both' }];
}

/** Where the client was placed on a ladder that the assessment says nothing about. */
function placedOn(ladder: GapLadder, { placements, date }: GapContext): SideSeen[] {
  const newest = placements
    .filter((one) => one.ladderId === ladder.id && one.from <= date)
    .sort((a, b) => (a.from === b.from ? (a.rungId < b.rungId ? -1 : 1) : a.from < b.from ? 1 : -1));
  const on = (side: Side): SideSeen => ({
    side,
    film: 'not-seen',
    rungId: newest.find((one) => one.side === side || one.side === 'both')?.rungId ?? null,
    sets: null,
    value: null,
    clean: null,
    pain: null,
  });
  return newest.some((one) => one.side !== 'both') ? [on('left'), on('right')] : [on('both')];
}

/** No support, the library's own weights, comes first; then what bends the wrist less, where it is at hand. */
function supportsFor(
  ladder: GapLadder,
  lines: readonly DrillLine[],
  kit: readonly string[],
): (Support | null)[] {
  const onFloor = lines.every(
    ({ rung }) => rung.equipment.includes('hard-floor') && (rung.weights['wrist-back'] ?? 0) > 0,
  );
  if (!onFloor || lines.some(({ rung }) => rung.family === 'mobility')) return [null];
  const usual = lines.every(({ rung }) => rung.equipment.includes('parallel-bars'));
  const waived = lines.flatMap(({ rung }) =>
    openingsUpTo({ ladder, rung }).flatMap(({ orOnSupports }) => orOnSupports),
  );
  const worth: Support[] = ['parallel-bars', 'wedge', 'hands-turned-out'];
  const others = worth.filter((one) => isAtHand(one, kit) && (kit.includes(one) || waived.includes(one)));
  return usual && others[0] === 'parallel-bars'
    ? ['parallel-bars', null, ...others.slice(1)]
    : [null, ...others];
}
