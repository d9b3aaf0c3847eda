import { type LeverShape, partOfFullMoment, shoulderMoment } from './lever-shape.ts';

export type EvenStep = {
  shape: LeverShape;
  /** Body weight x height. */
  moment: number;
  /** Part of the full position, 0-1. */
  part: number;
  /** What it adds to the moment of the step before, body weight x height, and as a part of it: 0.025 is 2.5 %. */
  added: number;
  rise: number;
};
export type EvenSteps =
  | { steps: EvenStep[]; problem: null }
  | { steps: []; problem: 'not-harder' | 'not-steady' };

const HALVINGS = 50;
const PROBES = 200;
const TENTHS = 10;

/**
 * `count` shapes on the straight way from one shape to a harder one, the last being `to` itself, so that each adds the
 * same moment at the shoulder (see `shoulderMoment`), not the same degrees. Where `rounded` is set, angles are the tenths of a
 * degree within two of the exact ones whose moment comes nearest, with that moment; exact otherwise. Whole degrees are
 * too coarse: of seven steps between two rungs 10° apart one would add twice as much as another. No steps where
 * `to` is not harder than `from` (`not-harder`), or where the way gets lighter on the way up (`not-steady`). Own statics.
 */
export function evenSteps(
  about: { from: LeverShape; to: LeverShape; count: number },
  { rounded }: { rounded: boolean } = { rounded: true },
): EvenSteps {
  const { from, to, count } = about;
  const [low, high] = [shoulderMoment(from), shoulderMoment(to)];
  if (!(high > low)) return { steps: [], problem: 'not-harder' };
  if (!risesAllTheWay(from, to)) return { steps: [], problem: 'not-steady' };
  const shapes = Array.from({ length: count }, (_, index) => {
    if (index === count - 1) return to;
    const moment = low + ((high - low) * (index + 1)) / count;
    const shape = shapeWith(moment, from, to);
    return rounded ? nearestTenths(shape, moment) : shape;
  });
  let before = low;
  const steps = shapes.map((shape) => {
    const moment = shoulderMoment(shape);
    const [added, rise] = [moment - before, moment / before - 1];
    before = moment;
    return { shape, moment, part: partOfFullMoment(shape), added, rise };
  });
  return { steps, problem: null };
}

function shapeWith(moment: number, from: LeverShape, to: LeverShape): LeverShape {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < HALVINGS; turn += 1) {
    const middle = (low + high) / 2;
    if (shoulderMoment(between(from, to, middle)) < moment) low = middle;
    else high = middle;
  }
  return between(from, to, high);
}

function risesAllTheWay(from: LeverShape, to: LeverShape): boolean {
  let before = shoulderMoment(from);
  for (let probe = 1; probe <= PROBES; probe += 1) {
    const here = shoulderMoment(between(from, to, probe / PROBES));
    if (here < before) return false;
    before = here;
  }
  return true;
}

function between(from: LeverShape, to: LeverShape, part: number): LeverShape {
  const mix = (a: number, b: number) => a + (b - a) * part;
  return {
    hip: mix(from.hip, to.hip),
    shank: mix(from.shank, to.shank),
    straddle: mix(from.straddle, to.straddle),
  };
}

/** When two angles change, rounding each alone would undo the evenness. */
function nearestTenths({ hip, shank, straddle }: LeverShape, moment: number): LeverShape {
  const far = (shape: LeverShape) => Math.abs(shoulderMoment(shape) - moment);
  const beside = tenthsBeside(hip).flatMap((h) =>
    tenthsBeside(shank).flatMap((s) =>
      tenthsBeside(straddle).map((w) => ({ hip: h, shank: s, straddle: w })),
    ),
  );
  return beside.reduce((best, shape) => (far(shape) < far(best) ? shape : best));
}

/** Never minus zero, which would be shown and compared as another number. */
function tenthsBeside(degrees: number): number[] {
  const near = Math.round(degrees * TENTHS) + 0;
  // The halvings end within a millionth: an angle that does not change stays as it is.
  if (Math.abs(degrees - near / TENTHS) < 1e-6) return [near / TENTHS];
  return [0, -1, 1, -2, 2].map((off) => (near + off) / TENTHS);
}
