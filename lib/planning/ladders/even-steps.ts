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

/**
 * `count` shapes on the straight way from one shape to a harder one, the last being `to` itself, so that each adds the
 * same moment at the shoulder (see `shoulderMoment`), not the same degrees. Angles in whole degrees where `whole` is
 * set, with the moment of the whole degrees; exact otherwise. No steps where `to` is not harder than `from`
 * (`not-harder`), or where the way between them gets lighter on the way up (`not-steady`). Own statics.
 */
export function evenSteps(
  about: { from: LeverShape; to: LeverShape; count: number },
  { whole }: { whole: boolean } = { whole: true },
): EvenSteps {
  const { from, to, count } = about;
  const [low, high] = [shoulderMoment(from), shoulderMoment(to)];
  if (!(high > low)) return { steps: [], problem: 'not-harder' };
  if (!risesAllTheWay(from, to)) return { steps: [], problem: 'not-steady' };
  const shapes = Array.from({ length: count }, (_, index) => {
    if (index === count - 1) return to;
    const shape = shapeWith(low + ((high - low) * (index + 1)) / count, from, to);
    return whole ? rounded(shape) : shape;
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

function rounded({ hip, shank, straddle }: LeverShape): LeverShape {
  return { hip: whole(hip), shank: whole(shank), straddle: whole(straddle) };
}

/** Never minus zero, which would be shown and compared as another number. */
function whole(degrees: number): number {
  return Math.round(degrees) + 0;
}
