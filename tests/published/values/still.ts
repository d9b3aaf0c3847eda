import { angleAt } from '#lib/balance/angles.ts';
import {
  centreOfMass,
  landmarkWeights,
  shoulderMomentOf,
  spreadOfCentre,
} from '#lib/balance/centre-of-mass.ts';
import { type Body, LANDMARKS, type Landmark, type Point } from '#lib/balance/landmarks.ts';
import { type MassModel, segmentsOf } from '#lib/balance/segment-tables.ts';
import { fromSource, type Line, type OutsideValue } from '../outside-value.ts';

const WINTER = 'Winter, Biomechanics and Motor Control of Human Movement, 4th ed. 2009, table 4.1';
const DE_LEVA = 'de Leva, J Biomech 29(9):1223-1230, 1996, women and men';
const LENGTHS = 'Drillis & Contini 1966, as printed in Winter 2009, figure 4.1';
const STATICS = `${WINTER}; ${LENGTHS}`;

const STANDING =
  'heights of the segments weighed with their masses; foot at half ankle height, hand 0.041 H below the wrist';
const CHAINED = 'rigid segments of the printed lengths from the wrist up, weighed with the printed masses';
const LEVEL =
  'distances of the segments beside the shoulder, trunk level and rigid, weighed with the printed masses';

const weightsLine = (model: MassModel, id: string, value: readonly number[]): Line => ({
  what: `${id} weight of each landmark in the centre of mass, ${model}`,
  value,
  within: 0.00006,
  how: 'mass of each segment shared between its ends as its centre lies between them',
  got: () => {
    const weights = landmarkWeights(model);
    return LANDMARKS.map((landmark) => weights[landmark]);
  },
});

const massSum = (model: MassModel) =>
  segmentsOf(model).reduce((sum, { mass, count }) => sum + mass * count, 0);

/** Lengths as parts of stature. */
const [FOREARM, UPPER_ARM, TRUNK, THIGH, SHANK, BALL, EAR] = [
  0.146, 0.186, 0.288, 0.245, 0.246, 0.087, 0.107,
];
const radians = (degrees: number) => (degrees * Math.PI) / 180;
const go = ({ x, y }: Point, degrees: number, length: number): Point => ({
  x: x + Math.sin(radians(degrees)) * length,
  y: y + Math.cos(radians(degrees)) * length,
});

/** A body over its wrist at 0; angles from upright, positive towards the fingers. */
function inverted(arms: number, trunk: number, legs: number, height = 1): Body {
  const wrist = { x: 0, y: 0 };
  const elbow = go(wrist, arms, FOREARM * height);
  const shoulder = go(elbow, arms, UPPER_ARM * height);
  const hip = go(shoulder, trunk, TRUNK * height);
  const knee = go(hip, legs, THIGH * height);
  const ankle = go(knee, legs, SHANK * height);
  return {
    wrist,
    elbow,
    shoulder,
    hip,
    knee,
    ankle,
    toe: go(ankle, legs, BALL * height),
    ear: go(shoulder, trunk, -EAR * height),
  };
}

const H = 1.75;
const centreCase = (
  id: string,
  [arms, trunk, legs]: [number, number, number],
  value: readonly number[],
): Line => ({
  what: `${id} centre of mass over the wrist, arms ${arms}, trunk ${trunk}, legs ${legs} degrees, 1.75 m`,
  value,
  within: 0.0002,
  how: CHAINED,
  got: () => {
    const { x, y } = centreOfMass(inverted(arms, trunk, legs, H), 'winter');
    return [x, y];
  },
});

/** Trunk level, head ahead of the shoulders, everything behind them towards larger x, so that the moment is positive. */
function level({ hip, shank, straddle }: { hip: number; shank: number; straddle: number }): Body {
  const wide = Math.cos(radians(straddle));
  const shoulder = { x: 0, y: 1 };
  const hips = { x: TRUNK, y: 1 };
  const knee = { x: TRUNK + THIGH * Math.cos(radians(hip)) * wide, y: 1 };
  const ankle = { x: knee.x + SHANK * Math.cos(radians(shank)) * wide, y: 1 };
  return {
    shoulder,
    hip: hips,
    knee,
    ankle,
    toe: { x: ankle.x + BALL * Math.cos(radians(shank)) * wide, y: 1 },
    ear: { x: -EAR, y: 1 },
    elbow: { x: 0, y: 0.5 },
    wrist: { x: 0, y: 0 },
  };
}

const MODELS = ['winter', 'de-leva-men', 'de-leva-women'] as const;
const momentCase = (
  id: string,
  position: string,
  [hip, shank, straddle]: [number, number, number],
  value: readonly number[],
): Line => ({
  what: `${id} gravity about the shoulder, ${position}, W H (Winter, de Leva men, women)`,
  value,
  within: 0.0001,
  how: LEVEL,
  got: () => MODELS.map((model) => shoulderMomentOf(level({ hip, shank, straddle }), model)),
});

/**
 * Upright with hanging arms: heights as parts of stature; the foot at half ankle height, the hand 0.041 below the wrist.
 * The head is taken at the ear for all tables, which de Leva's row puts elsewhere: that is 0.0006 of stature.
 */
function standingHeight(
  model: MassModel,
  { hip = 0.53, knee = 0.285, ankle = 0.039, shoulder = 0.818 } = {},
): number {
  const elbow = shoulder - UPPER_ARM;
  const wrist = elbow - FOREARM;
  const heights: Record<Landmark, number> = { ear: 0.925, shoulder, elbow, wrist, hip, knee, ankle, toe: 0 };
  const body = Object.fromEntries(LANDMARKS.map((name) => [name, { x: 0, y: heights[name] }])) as Body;
  const hands = segmentsOf(model).find(({ name }) => name === 'hand')?.mass ?? 0;
  return centreOfMass(body, model).y - 2 * hands * 0.041;
}

export const STILLS: OutsideValue[] = [
  ...fromSource(WINTER, 'derived', [
    weightsLine('winter', 'C6', [0.081, 0.28008, 0.04266, 0.02576, 0.3619, 0.13933, 0.05477, 0.0145]),
    {
      what: 'C1 the masses of all segments',
      how: 'sum of the column, paired segments twice',
      value: 1,
      within: 1e-12,
      got: () => massSum('winter'),
    },
    {
      what: 'C4 head, trunk and arms together',
      how: '0.497 + 0.081 + 2 x (0.028 + 0.016 + 0.006)',
      value: 0.678,
      within: 1e-9,
      got: () =>
        segmentsOf('winter')
          .filter(({ name }) => ['head', 'trunk', 'upper arm', 'forearm', 'hand'].includes(name))
          .reduce((sum, { mass, count }) => sum + mass * count, 0),
    },
  ]),
  ...fromSource(DE_LEVA, 'derived', [
    weightsLine('de-leva-men', 'C7', [0.0694, 0.2702, 0.04886, 0.02702, 0.35454, 0.16451, 0.05176, 0.0137]),
    weightsLine('de-leva-women', 'C8', [0.0668, 0.28635, 0.04436, 0.02378, 0.34983, 0.1611, 0.05477, 0.0129]),
    {
      what: 'C2 the masses of all segments, men',
      how: 'sum of the column, paired segments twice',
      value: 1,
      within: 1e-9,
      got: () => massSum('de-leva-men'),
    },
    {
      what: 'C3 the same, women',
      how: 'sum of the column, paired segments twice',
      value: 0.9999,
      within: 1e-9,
      got: () => massSum('de-leva-women'),
    },
  ]),
  ...fromSource(`${WINTER}; coordinates of its example`, 'memory', [
    {
      what: 'C5 centre of the foot and of the thigh, cm',
      value: [93, 6.15, 78.29, 76.39],
      within: 0.01,
      got: () => {
        const at = (name: string, from: Point, to: Point) => {
          const centre = segmentsOf('winter').find((segment) => segment.name === name)?.centre ?? 0;
          return [from.x + centre * (to.x - from.x), from.y + centre * (to.y - from.y)];
        };
        return [
          ...at('foot', { x: 84.9, y: 11 }, { x: 101.1, y: 1.3 }),
          ...at('thigh', { x: 72.1, y: 92.8 }, { x: 86.4, y: 54.9 }),
        ];
      },
    },
  ]),
  ...fromSource(`${WINTER}; ${DE_LEVA}; ${LENGTHS}`, 'derived', [
    {
      what: 'C10 height of the centre standing, Winter',
      how: STANDING,
      value: 0.5767,
      within: 0.0002,
      got: () => standingHeight('winter'),
    },
    {
      what: 'C11 the same, de Leva men',
      how: STANDING,
      value: 0.5661,
      within: 0.0008,
      got: () => standingHeight('de-leva-men'),
    },
    {
      what: 'C12 the same, de Leva women',
      how: STANDING,
      value: 0.5693,
      within: 0.0008,
      got: () => standingHeight('de-leva-women'),
    },
    {
      what: 'C13 the same with measured heights of men (ANSUR II 2014), Winter',
      how: STANDING,
      value: 0.5634,
      within: 0.0003,
      got: () => standingHeight('winter', { hip: 0.513, knee: 0.278, ankle: 0.0415, shoulder: 0.8 }),
    },
    {
      what: 'C9 spread of the centre, of a spread of 1 at each landmark',
      how: 'root of the sum of the squared weights',
      value: 0.49,
      within: 0.005,
      got: () =>
        spreadOfCentre(
          Object.fromEntries(LANDMARKS.map((name) => [name, 1])) as Record<Landmark, number>,
          'winter',
        ),
    },
  ]),
  ...fromSource(STATICS, 'derived', [
    centreCase('C15', [0, 0, 0], [0, 0.946]),
    centreCase('C17', [5, -6, 8], [0.0366, 0.9412]),
    centreCase('C18', [0, 0, -20], [-0.0415, 0.9387]),
    {
      what: 'C16 height of the centre over the wrist, de Leva men, H',
      how: CHAINED,
      value: 0.5485,
      within: 0.0002,
      got: () => centreOfMass(inverted(0, 0, 0), 'de-leva-men').y,
    },
    {
      what: 'C19 the centre moves, a degree of lean, 1.75 m, mm',
      how: CHAINED,
      value: 16.5,
      within: 0.05,
      got: () => 1000 * centreOfMass(inverted(1, 1, 1, H), 'winter').x,
    },
    {
      what: 'C20 lean of the whole body from heel to fingertip of the hand, degrees',
      how: 'arc tangent of 0.108 over the height of the centre',
      value: 11.3,
      within: 0.06,
      got: () => {
        const { y } = centreOfMass(inverted(0, 0, 0), 'winter');
        return angleAt({ x: 0, y: 0 }, { x: 0, y }, { x: 0.108, y });
      },
    },
    {
      what: 'C22 arms lean for legs that lag 5, 10, 15, 20, 30 degrees, centre over the wrist',
      how: CHAINED,
      value: [1.1, 2.2, 3.3, 4.31, 6.3],
      within: 0.06,
      got: () => [5, 10, 15, 20, 30].map(leanFor),
    },
    {
      what: 'C23 gravity about the shoulder for the same, W H',
      how: CHAINED,
      value: [0.006, 0.0121, 0.018, 0.0237, 0.0347],
      within: 0.00006,
      got: () =>
        [5, 10, 15, 20, 30].map((lag) => -shoulderMomentOf(inverted(leanFor(lag), 0, -lag), 'winter')),
    },
    momentCase('C25', 'tuck', [130, -20, 0], [0.14, 0.1409, 0.1402]),
    momentCase('C25', 'advanced tuck, shins level', [90, 0, 0], [0.1739, 0.1782, 0.1773]),
    momentCase('C25', 'advanced tuck, heels folded', [90, -45, 0], [0.1686, 0.1731, 0.1721]),
    momentCase('C25', 'open tuck', [60, 0, 0], [0.1995, 0.2064, 0.2053]),
    momentCase('C26', 'straddle 60', [0, 0, 60], [0.1903, 0.1977, 0.1964]),
    momentCase('C26', 'straddle 45', [0, 0, 45], [0.2047, 0.213, 0.2117]),
    momentCase('C26', 'straddle 30', [0, 0, 30], [0.2157, 0.2247, 0.2234]),
    momentCase('C28', 'half-lay', [0, 90, 0], [0.2067, 0.2173, 0.2155]),
    momentCase('C25', 'full', [0, 0, 0], [0.225, 0.2346, 0.2333]),
    {
      what: 'C27 tuck to advanced tuck, heels at -20, hip 130 to 90 by 5 degrees, W H',
      how: LEVEL,
      value: [0.14, 0.1435, 0.1473, 0.1512, 0.1554, 0.1596, 0.164, 0.1684, 0.1728],
      within: 0.0001,
      got: () =>
        [130, 125, 120, 115, 110, 105, 100, 95, 90].map((hip) =>
          shoulderMomentOf(level({ hip, shank: -20, straddle: 0 }), 'winter'),
        ),
    },
  ]),
];

/** Lean of the arms that brings the centre over the wrist, trunk upright, legs lagging: found by halving. */
function leanFor(lag: number): number {
  let [low, high] = [0, 20];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (centreOfMass(inverted(middle, 0, -lag), 'winter').x < 0) low = middle;
    else high = middle;
  }
  return low;
}
