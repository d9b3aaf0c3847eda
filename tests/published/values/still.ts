import { angleAt } from '#lib/balance/angles.ts';
import {
  centreOfMass,
  landmarkWeights,
  shoulderMomentOf,
  spreadOfCentre,
} from '#lib/balance/centre-of-mass.ts';
import { helpedPart } from '#lib/balance/drawn-lines.ts';
import { type Body, LANDMARKS, type Landmark, type Point } from '#lib/balance/landmarks.ts';
import { addUp, type MassModel, segmentsOf } from '#lib/balance/segment-tables.ts';
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

/** Of a body that stands straight on its hands: degrees until its centre is that part of its stature to the side. */
function leanAcross(half: number): number {
  const { y } = centreOfMass(inverted(0, 0, 0), 'winter');
  return angleAt({ x: 0, y: 0 }, { x: 0, y }, { x: half, y }) ?? 0;
}

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

const bodyOf = (head: number, trunk: number, pairs: readonly number[]) => [
  { mass: head, count: 1 },
  { mass: trunk, count: 1 },
  ...pairs.map((mass) => ({ mass, count: 2 })),
];
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

/** Lying along the floor over upright arms, turning about the ankles; the feet stand. */
const PLANK = { x: TRUNK + THIGH + SHANK, y: 0 };
function plank(): Body {
  const at = (x: number) => ({ x, y: 0 });
  const [ankle, arms] = [at(0), PLANK];
  return {
    ankle,
    toe: ankle,
    knee: at(SHANK),
    hip: at(SHANK + THIGH),
    shoulder: arms,
    elbow: arms,
    wrist: arms,
    ear: at(arms.x + EAR),
  };
}

/** Trunk and arms upright over the hands, legs level, the feet on a support that turns at the ankle. */
function highPike(): Body {
  const [over, ankle] = [
    { x: 0, y: 0 },
    { x: THIGH + SHANK, y: 0 },
  ];
  return {
    wrist: over,
    elbow: over,
    shoulder: over,
    ear: over,
    hip: over,
    knee: { x: THIGH, y: 0 },
    ankle,
    toe: ankle,
  };
}

/** Toes in line with the legs, arms in line with the trunk, this angle between: part of the weight on the hands. */
function floorPikeShare(hip: number, model: MassModel): number {
  const legs = (along: number): Point => ({ x: along, y: 0 });
  const top = BALL + SHANK + THIGH;
  const trunk = (along: number): Point => ({
    x: top - along * Math.cos(radians(hip)),
    y: along * Math.sin(radians(hip)),
  });
  const wrist = trunk(TRUNK + UPPER_ARM + FOREARM);
  const centre = centreOfMass(
    {
      toe: legs(0),
      ankle: legs(BALL),
      knee: legs(BALL + SHANK),
      hip: legs(top),
      shoulder: trunk(TRUNK),
      ear: trunk(TRUNK + EAR),
      elbow: trunk(TRUNK + UPPER_ARM),
      wrist,
    },
    model,
  );
  return (centre.x * wrist.x + centre.y * wrist.y) / (wrist.x ** 2 + wrist.y ** 2);
}

/** Arms that lean forward, trunk level: the lean that brings the centre over the wrist, degrees. */
function plancheLean(position: { hip: number; shank: number; straddle: number }, model: MassModel): number {
  const flat = level(position);
  let [low, high] = [0, 89];
  for (let step = 0; step < 60; step += 1) {
    const lean = (low + high) / 2;
    const wrist = { x: 0, y: 0 };
    const elbow = go(wrist, -lean, FOREARM);
    const shoulder = go(elbow, -lean, UPPER_ARM);
    const moved = Object.fromEntries(
      Object.entries(flat).map(([name, { x }]) => [name, { x: x + shoulder.x, y: shoulder.y }]),
    ) as Body;
    if (centreOfMass({ ...moved, wrist, elbow, shoulder }, model).x > 0) low = lean;
    else high = lean;
  }
  return low;
}

const [KG, GRAVITY] = [70, 9.81];
const newtonMetres = (moment: number) => moment * KG * GRAVITY * H;
const massOf = (model: MassModel, name: string) =>
  segmentsOf(model).find((segment) => segment.name === name)?.mass ?? 0;

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
  ...fromSource('Bartlett 1997, Introduction to Sports Biomechanics, table 5.1', 'memory', [
    {
      what: 'table 1.3: the masses add up to a body',
      value: 1,
      within: 0,
      got: () => Number(addUp(bodyOf(0.081, 0.497, [0.028, 0.016, 0.006, 0.101, 0.046, 0.014]))),
    },
  ]),
  ...fromSource('Plagenhoef et al. 1983, as two pages print it', 'printed', [
    {
      what: 'table 1.3: men with a head of 8.26 and women add up, men with the misprinted 8.96 do not',
      value: [1, 1, 0],
      within: 0,
      got: () => {
        const men = [0.0325, 0.0187, 0.0065, 0.105, 0.0475, 0.0143];
        const women = [0.029, 0.0157, 0.005, 0.1175, 0.0535, 0.0133];
        return [bodyOf(0.0826, 0.4684, men), bodyOf(0.082, 0.45, women), bodyOf(0.0896, 0.4684, men)].map(
          (body) => Number(addUp(body)),
        );
      },
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
      what: 'C33 part of the weight on fingers 350 mm from the hand, centre 50 mm from it',
      how: 'two supports at rest: way of the centre from the hand over their distance',
      value: 0.1429,
      within: 0.0001,
      got: () => helpedPart({ carrying: { x: 0, y: 0 }, helping: { x: 0.35, y: 0 } }, 0.05, 0)?.part ?? 0,
    },
    {
      what: 'C34 lean sideways to the edge of one hand (half of its breadth 0.0252 H) and to one of two (0.118 H), degrees',
      how: 'arc tangent of the half base over the height of the centre, Winter',
      value: [2.67, 12.35],
      within: 0.05,
      got: () => [0.0252, 0.118].map(leanAcross),
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
    {
      what: 'C26 one leg out, the other tucked or folded, W H (Winter, de Leva men, women)',
      how: `${LEVEL}; half of each leg`,
      value: [0.1825, 0.1878, 0.1867, 0.1968, 0.2038, 0.2027],
      within: 0.0001,
      got: () =>
        [
          { hip: 130, shank: -20, straddle: 0 },
          { hip: 90, shank: -45, straddle: 0 },
        ].flatMap((bent) =>
          MODELS.map(
            (model) =>
              (shoulderMomentOf(level({ hip: 0, shank: 0, straddle: 0 }), model) +
                shoulderMomentOf(level(bent), model)) /
              2,
          ),
        ),
    },
    {
      what: 'C28 the full planche and a leg lag of 20 degrees, both shoulders, 70 kg and 1.75 m, N m',
      how: 'part of W H x m x 9.81 x H',
      value: [270.4, 281.9, 280.4, 28.5],
      within: 0.3,
      got: () => [
        ...MODELS.map((model) =>
          newtonMetres(shoulderMomentOf(level({ hip: 0, shank: 0, straddle: 0 }), model)),
        ),
        newtonMetres(-shoulderMomentOf(inverted(leanFor(20), 0, -20), 'winter')),
      ],
    },
    {
      what: 'C24 lean of the arms by the closed form, legs lagging 20 degrees',
      how: 'sin of the lean = 0.2200 x sin of the lag',
      value: (Math.asin(0.22 * Math.sin(radians(20))) * 180) / Math.PI,
      within: 0.01,
      got: () => leanFor(20),
    },
    {
      what: 'lean of the arms of tuck, advanced tuck, straddle 45 and full planche, degrees (Winter, then de Leva men)',
      how: 'centre over the wrist, trunk level; found by halving',
      value: [26.3, 33.5, 40.5, 45.5, 26.7, 34.6, 42.7, 48.3],
      within: 0.1,
      got: () =>
        (['winter', 'de-leva-men'] as const).flatMap((model) =>
          [
            { hip: 130, shank: -20, straddle: 0 },
            { hip: 90, shank: 0, straddle: 0 },
            { hip: 0, shank: 0, straddle: 45 },
            { hip: 0, shank: 0, straddle: 0 },
          ].map((position) => plancheLean(position, model)),
        ),
    },
    {
      what: 'C29 part of the weight on the hands, flat plank (Winter, de Leva men, women)',
      how: 'straight body over upright arms, turning about the ankles',
      value: [0.7127, 0.7004, 0.702],
      within: 0.0005,
      got: () => MODELS.map((model) => centreOfMass(plank(), model).x / PLANK.x),
    },
    {
      what: 'C30 the same with the trunk upright over the hands and legs level (Winter, de Leva men)',
      how: 'what the support under the feet does not carry',
      value: [0.8612, 0.853],
      within: 0.0006,
      got: () =>
        (['winter', 'de-leva-men'] as const).map(
          (model) => 1 - centreOfMass(highPike(), model).x / (THIGH + SHANK),
        ),
    },
    {
      what: 'C31 the same in a floor pike, hips at 90, then from 120 to 60 degrees, Winter',
      how: 'lever about the toes, arms in line with the trunk',
      value: [0.538, 0.545, 0.515],
      within: 0.001,
      got: () => [90, 120, 60].map((hip) => floorPikeShare(hip, 'winter')),
    },
    {
      what: 'C32 part of the mass that is lifted in a handstand push-up (Winter, de Leva men, women)',
      how: '1 - 2 x (forearm + hand)',
      value: [0.956, 0.9554, 0.9612],
      within: 1e-9,
      got: () => MODELS.map((model) => 1 - 2 * (massOf(model, 'forearm') + massOf(model, 'hand'))),
    },
    {
      what: 'C51 moment of hips at 105 over that at 110 degrees',
      how: LEVEL,
      value: 1.027,
      within: 0.001,
      got: () =>
        shoulderMomentOf(level({ hip: 105, shank: -20, straddle: 0 }), 'winter') /
        shoulderMomentOf(level({ hip: 110, shank: -20, straddle: 0 }), 'winter'),
    },
    {
      what: 'C21 moment of the wrist with the centre 70 mm ahead, at the knuckles and at the fingertips, 70 kg, N m',
      how: 'm x 9.81 x how far the centre is ahead, as a whole body leans by it',
      value: [48.07, 77.9, 129.8],
      within: 0.05,
      got: () => [0.07, 0.6 * 0.108 * H, 0.108 * H].map((ahead) => KG * GRAVITY * aheadOf(ahead)),
    },
    {
      what: 'C36 time constant of the fall about the wrist, 1.75 m, s',
      how: 'root of 0.3584 H over (9.81 x height of the centre as a part of H)',
      value: 0.344,
      within: 0.001,
      got: () => Math.sqrt((0.3584 * H) / (GRAVITY * centreOfMass(inverted(0, 0, 0), 'winter').y)),
    },
    {
      what: 'C52 the centre shifts by so much where the trunk row of another landmark is taken, men and women, mm',
      how: 'mass of the trunk x difference of its centres (0.4486, 0.4151) x its length',
      value: [3.86, 7.92],
      within: 0.02,
      got: () =>
        (
          [
            ['de-leva-men', 0.4486],
            ['de-leva-women', 0.4151],
          ] as const
        ).map(([model, other]) => {
          const trunk = segmentsOf(model).find(({ name }) => name === 'trunk');
          return 1000 * (trunk?.mass ?? 0) * (other - (trunk?.centre ?? 0)) * TRUNK * H;
        }),
    },
    {
      what: 'C14 height of the centre standing by the row of head, arms and trunk together',
      how: '0.678 at 0.530 + 0.626 x 0.288, legs segment by segment',
      value: 0.58352,
      within: 0.00005,
      got: () => {
        const legs = (['thigh', 'shank', 'foot'] as const).map((name) => massOf('winter', name) * 2);
        const centres = [0.53 - 0.433 * (0.53 - 0.285), 0.285 - 0.433 * (0.285 - 0.039), 0.0195];
        const below = legs.reduce((sum, mass, at) => sum + mass * (centres[at] ?? 0), 0);
        return (1 - legs.reduce((sum, mass) => sum + mass, 0)) * (0.53 + 0.626 * 0.288) + below;
      },
    },
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

/** How far the centre of a straight body is ahead of the wrist once it leans so that it is. */
function aheadOf(ahead: number): number {
  const straight = centreOfMass(inverted(0, 0, 0, H), 'winter').y;
  const lean = (Math.asin(ahead / straight) * 180) / Math.PI;
  return centreOfMass(inverted(lean, lean, lean, H), 'winter').x;
}

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
