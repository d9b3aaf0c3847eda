import { type Body, LANDMARKS, type Landmark, type Point } from './landmarks.ts';
import { type MassModel, segmentsOf } from './segment-tables.ts';

/** Segments that hang on the shoulder when the hands carry: the body without the arms. */
const ARMS: readonly string[] = ['upper arm', 'forearm', 'hand'];

/**
 * How much each landmark counts for the centre of mass: each segment is shared between its two ends as its centre lies
 * between them. Over the whole body they add up to 1. `without`: segments left out.
 */
export function landmarkWeights(model: MassModel, without: readonly string[] = []): Record<Landmark, number> {
  const weights = Object.fromEntries(LANDMARKS.map((landmark) => [landmark, 0])) as Record<Landmark, number>;
  const segments = segmentsOf(model);
  const whole = segments.reduce((sum, { mass, count }) => sum + mass * count, 0);
  for (const { name, from, to, mass, count, centre } of segments) {
    if (without.includes(name)) continue;
    const part = (mass * count) / whole;
    weights[from] += part * (1 - centre);
    weights[to] += part * centre;
  }
  return weights;
}

/** Where the centre of mass of the body lies, in the unit of the points. */
export function centreOfMass(body: Body, model: MassModel): Point {
  return weighed(body, landmarkWeights(model));
}

/**
 * How much gravity turns the shoulder, in body weight x the unit of the points, both shoulders together: mass of the body
 * without the arms x how far its centre lies beside the shoulder. Positive towards larger x.
 */
export function shoulderMomentOf(body: Body, model: MassModel): number {
  const weights = landmarkWeights(model, ARMS);
  let moment = 0;
  for (const landmark of LANDMARKS) moment += weights[landmark] * (body[landmark].x - body.shoulder.x);
  return moment;
}

/**
 * Spread of the centre of mass on one axis when each landmark is placed with this spread (standard deviation) by itself,
 * in the unit of the spreads.
 */
export function spreadOfCentre(spreads: Readonly<Record<Landmark, number>>, model: MassModel): number {
  const weights = landmarkWeights(model);
  let sum = 0;
  for (const landmark of LANDMARKS) sum += (weights[landmark] * spreads[landmark]) ** 2;
  return Math.sqrt(sum);
}

function weighed(body: Body, weights: Readonly<Record<Landmark, number>>): Point {
  let [x, y] = [0, 0];
  for (const landmark of LANDMARKS) {
    x += weights[landmark] * body[landmark].x;
    y += weights[landmark] * body[landmark].y;
  }
  return { x, y };
}
