import { PLACED, type Placed, type Point } from './landmarks.ts';
import { readStill, type Still, type StillReading } from './read-still.ts';

/** Standard deviation of placing one point, pixels, the same on both axes. */
export type PlacingSpread = Record<keyof Placed, number>;

/** Of pixels, in a picture of a body some 800 pixels high: own choice until somebody placed the points twice. */
export const FIRST_SPREAD = 4;

/** Spread of each point, out of placing all of them twice: half of the squared distance, on two axes. Pixels. */
export function spreadOfPlacings(first: Placed, second: Placed): PlacingSpread {
  // One pair says little of one point: the points share what all of them say together.
  let squares = 0;
  for (const name of PLACED)
    squares += (first[name].x - second[name].x) ** 2 + (first[name].y - second[name].y) ** 2;
  const spread = Math.sqrt(squares / (2 * 2 * PLACED.length));
  return sameSpread(spread);
}

export function sameSpread(spread: number): PlacingSpread {
  return Object.fromEntries(PLACED.map((name) => [name, spread])) as PlacingSpread;
}

/** Standard deviations, in the units of the reading. */
export type StillErrors = {
  centreX: number;
  centreY: number;
  partOfHand: number;
  shoulderAngle: number;
  hipAngle: number;
  elbowAngle: number;
  kneeAngle: number;
  stackShoulder: number;
  stackHip: number;
  stackAnkle: number;
  hipOverShoulder: number;
  lean: number;
  shoulderMoment: number;
};

/**
 * What placing brings to each figure: every point is moved by its spread on both axes, the ends of the plumb line too, and
 * the changes are added up as squares. First order: good while the spread is small beside the limbs.
 */
export function stillErrors(still: Still, spread: PlacingSpread): StillErrors | undefined {
  const base = readStill(still);
  if (!base) return undefined;
  const at = figuresOf(base);
  const squares = at.map(() => 0);
  for (const moved of movedStills(still, spread)) {
    const reading = readStill(moved);
    if (!reading) return undefined;
    figuresOf(reading).forEach((figure, index) => {
      squares[index] = (squares[index] ?? 0) + (figure - (at[index] ?? 0)) ** 2;
    });
  }
  const [
    centreX = 0,
    centreY = 0,
    partOfHand = 0,
    shoulderAngle = 0,
    hipAngle = 0,
    elbowAngle = 0,
    kneeAngle = 0,
    stackShoulder = 0,
    stackHip = 0,
    stackAnkle = 0,
    hipOverShoulder = 0,
    lean = 0,
    shoulderMoment = 0,
  ] = squares.map(Math.sqrt);
  return {
    centreX,
    centreY,
    partOfHand,
    shoulderAngle,
    hipAngle,
    elbowAngle,
    kneeAngle,
    stackShoulder,
    stackHip,
    stackAnkle,
    hipOverShoulder,
    lean,
    shoulderMoment,
  };
}

function* movedStills(still: Still, spread: PlacingSpread): Generator<Still> {
  for (const axis of ['x', 'y'] as const) {
    for (const name of PLACED) {
      yield { ...still, placed: { ...still.placed, [name]: moved(still.placed[name], axis, spread[name]) } };
    }
    for (const end of ['top', 'bottom'] as const) {
      yield { ...still, plumb: { ...still.plumb, [end]: moved(still.plumb[end], axis, spread.wrist) } };
    }
  }
}

function moved(point: Point, axis: 'x' | 'y', by: number): Point {
  return { ...point, [axis]: point[axis] + by };
}

function figuresOf(reading: StillReading): number[] {
  const { centre, partOfHand, angles, stack, hipOverShoulder, lean, shoulderMoment } = reading;
  const { shoulder, hip, elbow, knee } = angles;
  return [
    centre.x,
    centre.y,
    partOfHand ?? 0,
    shoulder ?? 0,
    hip ?? 0,
    elbow ?? 0,
    knee ?? 0,
    stack.shoulder,
    stack.hip,
    stack.ankle,
    hipOverShoulder,
    lean ?? 0,
    shoulderMoment,
  ];
}

/** A figure to the first place of its error: 0.7 leaves tenths, 12 leaves tens. Same unit; error 0 leaves it alone. */
export function toErrorPlace(value: number, error: number): number {
  if (!(error > 0)) return value;
  const step = 10 ** Math.floor(Math.log10(error));
  return Number((Math.round(value / step) * step).toPrecision(12));
}
