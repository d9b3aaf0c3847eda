import type { Measure } from '#lib/domain/vocabulary.ts';
import { evenSteps } from '#lib/planning/ladders/even-steps.ts';
import { type LeverShape, partOfFullMoment, shoulderMoment } from '#lib/planning/ladders/lever-shape.ts';

export type ShapeTexts = { hip: string; shank: string; straddle: string };
export type ShownStep = {
  /** "119.6°". */
  shape: string;
  /** "0.1473". */
  moment: string;
  /** "65.3 %". */
  part: string;
  /** "+0.0037, 2.6 %" over the step before. */
  rise: string;
  weight: number;
  name: string;
};
export type ShownSteps = {
  start: { shape: string; moment: string; part: string };
  steps: ShownStep[];
  /** How even they are, and what even degrees would do instead: "They add from 0.0012 to 0.0013 each; in even degrees from 0.0011 to 0.0014." */
  besides: string;
  /** Said where steps are too small to see. */
  doubt: string;
};

const PERCENT = 100;
const MOMENT_DIGITS = 4;
/** Two would leave the loads of small steps uneven: 0.622, 0.633, 0.644, 0.654 became 0.62, 0.63, 0.64, 0.65. */
const WEIGHT_DIGITS = 3;
/** About the smallest change of angle that a still picture shows; own estimate. */
const SMALLEST_SEEN = 5;

/** The shape as typed; undefined: an angle is not a number from -90 to 180. */
export function readShape(texts: ShapeTexts): LeverShape | undefined {
  const angles = [texts.hip, texts.shank, texts.straddle].map((text) =>
    text.trim() === '' ? Number.NaN : Number(text.replace(',', '.')),
  );
  const [hip, shank, straddle] = angles;
  const isAngle = (angle: number | undefined): angle is number =>
    angle !== undefined && angle >= -90 && angle <= 180;
  return isAngle(hip) && isAngle(shank) && isAngle(straddle) ? { hip, shank, straddle } : undefined;
}

/** Steps even in load between two shapes, in words; a sentence where there are none. */
export function shownSteps(about: {
  from: LeverShape;
  to: LeverShape;
  count: number;
  name: string;
}): ShownSteps | { problem: string } {
  const found = evenSteps(about);
  if (found.problem === 'not-harder')
    return {
      problem:
        'The second shape turns the shoulder no harder than the first. Open the hip further, or change places.',
    };
  if (found.problem === 'not-steady')
    return {
      problem:
        'On the way between these shapes the load falls before it rises. Choose shapes that differ in fewer angles.',
    };
  return {
    start: {
      shape: shapeInWords(about.from),
      moment: shoulderMoment(about.from).toFixed(MOMENT_DIGITS),
      part: percent(partOfFullMoment(about.from), 1),
    },
    steps: found.steps.map((step, index) => ({
      shape: shapeInWords(step.shape),
      moment: step.moment.toFixed(MOMENT_DIGITS),
      part: percent(step.part, 1),
      rise: `+${step.added.toFixed(MOMENT_DIGITS)}, ${percent(step.rise, 1)}`,
      weight: Number(step.part.toFixed(WEIGHT_DIGITS)),
      name: index === found.steps.length - 1 ? about.name : `Opened to ${shapeInWords(step.shape)}`,
    })),
    besides: besideEvenDegrees(
      found.steps.map((step) => step.added),
      about,
    ),
    doubt: tooSmall([about.from, ...found.steps.map((step) => step.shape)]),
  };
}

/** "119.6°", with shins and straddle where they say something. */
export function shapeInWords({ hip, shank, straddle }: LeverShape): string {
  const degrees = (angle: number) => `${Number(angle.toFixed(1))}°`;
  const shins = shank === 0 || shank === -20 ? [] : [`shins ${degrees(shank)}`];
  return [degrees(hip), ...shins, ...(straddle === 0 ? [] : [`straddle ${degrees(straddle)}`])].join(', ');
}

function besideEvenDegrees(
  steps: readonly number[],
  { from, to, count }: { from: LeverShape; to: LeverShape; count: number },
): string {
  const at = (step: number) => (a: number, b: number) => a + ((b - a) * step) / count;
  const moments = Array.from({ length: count + 1 }, (_, step) => {
    const mix = at(step);
    return shoulderMoment({
      hip: mix(from.hip, to.hip),
      shank: mix(from.shank, to.shank),
      straddle: mix(from.straddle, to.straddle),
    });
  });
  const added = moments.slice(1).map((moment, index) => moment - (moments[index] ?? moment));
  return `They add ${range(steps)} each; in even degrees it would be ${range(added)}.`;
}

function range(added: readonly number[]): string {
  const [least, most] = [Math.min(...added), Math.max(...added)].map((one) => one.toFixed(MOMENT_DIGITS));
  return least === most ? `${least}` : `from ${least} to ${most}`;
}

function tooSmall(shapes: LeverShape[]): string {
  const seen = shapes.slice(1).every((shape, index) => {
    const before = shapes[index] ?? shape;
    const most = Math.max(
      Math.abs(shape.hip - before.hip),
      Math.abs(shape.shank - before.shank),
      Math.abs(shape.straddle - before.straddle),
    );
    return most >= SMALLEST_SEEN;
  });
  return seen ? '' : 'Some steps differ by less than 5°, about the smallest change that a picture shows.';
}

function percent(part: number, digits: number): string {
  return `${(part * PERCENT).toFixed(digits)} %`;
}

/** Pass targets even between the mark below and the mark of the rung, the last being its own; whole for counted things. */
export function evenTargets(from: number, to: number, count: number, measure: Measure): number[] {
  const whole = measure === 'reps' || measure === 'made-tried';
  return Array.from({ length: count }, (_, index) => {
    const target = from + ((to - from) * (index + 1)) / count;
    return whole ? Math.round(target) : Number(target.toFixed(1));
  });
}
