import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bodyAngles } from '#lib/balance/angles.ts';
import { centreOfMass, landmarkWeights } from '#lib/balance/centre-of-mass.ts';
import { handPlace, partOfHand } from '#lib/balance/hand-place.ts';
import { impossibleJoints } from '#lib/balance/impossible-joints.ts';
import { LANDMARKS, PLACED, type Placed, type Point } from '#lib/balance/landmarks.ts';
import { readStill, type Still } from '#lib/balance/read-still.ts';
import { MASS_MODELS } from '#lib/balance/segment-tables.ts';
import { mirrored, setUpright } from '#lib/balance/set-up.ts';
import { sameSpread, spreadOfPlacings, stillErrors, toErrorPlace } from '#lib/balance/still-errors.ts';

/** A straight handstand drawn in pixels, 400 to a stature of 1.6 m, y down, fingers to the right. */
const PER_H = 400;
const at = (x: number, up: number): Point => ({ x: 500 + x * PER_H, y: 900 - up * PER_H });
const STRAIGHT: Placed = {
  heel: at(-0.02, 0),
  fingertip: at(0.088, 0),
  wrist: at(0, 0.02),
  elbow: at(0, 0.166),
  shoulder: at(0, 0.352),
  ear: at(0, 0.245),
  hip: at(0, 0.64),
  knee: at(0, 0.885),
  ankle: at(0, 1.131),
  toe: at(0, 1.218),
};
const still = (over: Partial<Still> = {}): Still => ({
  placed: STRAIGHT,
  plumb: { top: { x: 100, y: 100 }, bottom: { x: 100, y: 900 } },
  scale: { by: 'stature', metres: 1.6 },
  model: 'de-leva-women',
  ...over,
});
const read = (over: Partial<Still> = {}) => {
  const reading = readStill(still(over));
  if (!reading) throw new Error('no reading');
  return reading;
};
const turned = (degrees: number, point: Point, about: Point = { x: 500, y: 900 }): Point => {
  const [sin, cos] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
  const [x, y] = [point.x - about.x, point.y - about.y];
  return { x: about.x + x * cos - y * sin, y: about.y + x * sin + y * cos };
};
const map = (points: Placed, change: (point: Point) => Point): Placed =>
  Object.fromEntries(Object.entries(points).map(([name, point]) => [name, change(point)])) as Placed;

const spot = fc.record({ x: fc.integer({ min: 0, max: 2000 }), y: fc.integer({ min: 0, max: 2000 }) });
const anyPlaced = fc
  .tuple(...PLACED.map(() => spot))
  .map((points) => Object.fromEntries(PLACED.map((name, index) => [name, points[index]])) as Placed);

describe('a still', () => {
  it('of a straight line stands over the wrist, its angles straight', () => {
    const reading = read();
    expect(reading.centre.x).toBeCloseTo(0.02 * 1.6, 3);
    expect(reading.partOfHand).toBeCloseTo(0.02 / 0.108, 3);
    expect(handPlace(reading.partOfHand ?? Number.NaN)).toBe('under-balance');
    expect(reading.angles.shoulder).toBeCloseTo(180, 6);
    expect(reading.stack).toEqual({
      shoulder: expect.closeTo(0, 6),
      hip: expect.closeTo(0, 6),
      ankle: expect.closeTo(0, 6),
    });
    expect(reading.hipOverShoulder).toBeCloseTo(0.288 * 1.6, 3);
    expect(reading.lean).toBeCloseTo(0, 5);
    expect(reading.shoulderMoment).toBeCloseTo(0, 6);
  });

  it('taken with a tilted camera says the same once the plumb line is set, and falsely leans without', () => {
    const tilted = map(STRAIGHT, (point) => turned(2, point));
    const plumb = { top: turned(2, { x: 100, y: 100 }), bottom: turned(2, { x: 100, y: 900 }) };
    const [straight, set] = [read(), read({ placed: tilted, plumb })];
    expect(set.partOfHand).toBeCloseTo(straight.partOfHand ?? Number.NaN, 9);
    expect(set.tilt).toBeCloseTo(-2, 6);
    // 2 degrees fake about a sixth of the hand.
    const unset = read({ placed: tilted });
    expect(Math.abs((unset.partOfHand ?? 0) - (straight.partOfHand ?? 0))).toBeGreaterThan(0.15);
  });

  it('mirrored, moved, scaled: says the same', () => {
    fc.assert(
      fc.property(
        anyPlaced,
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: -300, max: 300 }),
        (placed, times, by) => {
          fc.pre(placed.heel.x !== placed.fingertip.x);
          const scale = { by: 'hand', metres: 0.18 } as const;
          const base = readStill(still({ placed, scale }));
          fc.pre(base !== undefined);
          const bigger = map(placed, ({ x, y }) => ({ x: x * times + by, y: y * times - by }));
          for (const other of [mirrored(placed, 2000), bigger]) {
            const reading = readStill(still({ placed: other, scale }));
            expect(reading?.centre.x).toBeCloseTo(base?.centre.x ?? Number.NaN, 6);
            expect(reading?.partOfHand).toBeCloseTo(base?.partOfHand ?? Number.NaN, 6);
            expect(reading?.stack.hip).toBeCloseTo(base?.stack.hip ?? Number.NaN, 6);
          }
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('moves its centre by the weight of the joint that moves', () => {
    fc.assert(
      fc.property(
        anyPlaced,
        fc.constantFrom(...LANDMARKS),
        fc.constantFrom(...MASS_MODELS),
        fc.integer({ min: -500, max: 500 }),
        (placed, joint, model, by) => {
          const before = centreOfMass(placed, model);
          const after = centreOfMass(
            { ...placed, [joint]: { ...placed[joint], x: placed[joint].x + by } },
            model,
          );
          expect(after.x - before.x).toBeCloseTo(landmarkWeights(model)[joint] * by, 6);
          expect(after.y).toBeCloseTo(before.y, 9);
        },
      ),
      { numRuns: 1000 },
    );
    for (const model of MASS_MODELS)
      expect(Object.values(landmarkWeights(model)).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(
        1,
        12,
      );
  });

  it('says nothing where there is no plumb line, no hand or no scale', () => {
    const point = { x: 1, y: 1 };
    expect(readStill(still({ plumb: { top: point, bottom: point } }))).toBeUndefined();
    expect(readStill(still({ scale: { by: 'hand', metres: 0 } }))).toBeUndefined();
    const flat = { ...STRAIGHT, fingertip: STRAIGHT.heel };
    expect(readStill(still({ placed: flat, scale: { by: 'hand', metres: 0.18 } }))).toBeUndefined();
    expect(partOfHand(0.1, 0)).toBeUndefined();
    expect(bodyAngles({ ...STRAIGHT, elbow: STRAIGHT.shoulder }).shoulder).toBeUndefined();
    expect(setUpright(STRAIGHT, still().plumb, { by: 'stature', metres: 1.6 })?.metresPerPixel).toBeCloseTo(
      1.6 / PER_H,
      4,
    );
  });

  it('names where a centre stands, to the edge', () => {
    const places = [-0.01, 0, 0.24, 0.25, 0.6, 0.61, 1, 1.01].map((part) => handPlace(part));
    expect(places).toEqual([
      'behind-the-heel',
      'under-balance',
      'under-balance',
      'over-the-hand',
      'over-the-hand',
      'over-balance',
      'over-balance',
      'past-the-fingers',
    ]);
  });

  it('names joints that cannot be where they were placed', () => {
    expect(impossibleJoints(STRAIGHT)).toEqual([]);
    const odd = { ...STRAIGHT, elbow: at(0.9, 0.2) };
    expect(impossibleJoints(odd).map(({ segment }) => segment)).toEqual(['forearm', 'upper arm']);
    expect(impossibleJoints(map(STRAIGHT, () => ({ x: 1, y: 1 })))).toHaveLength(5);
  });
});

describe('the error of placing', () => {
  it('is as large as placing again and again makes it', () => {
    const errors = stillErrors(still(), sameSpread(4));
    let seed = 7;
    const random = () => {
      seed = (seed * 48271) % 2147483647;
      return seed / 2147483647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random()) * 4;
    const shift = ({ x, y }: Point) => ({ x: x + normal(), y: y + normal() });
    const readings = Array.from({ length: 4000 }, () =>
      read({
        placed: map(STRAIGHT, shift),
        plumb: { top: shift({ x: 100, y: 100 }), bottom: shift({ x: 100, y: 900 }) },
      }),
    );
    const spreadOf = (values: number[]) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length);
    };
    expect((errors?.centreX ?? 0) / spreadOf(readings.map(({ centre }) => centre.x))).toBeCloseTo(1, 1);
    expect((errors?.partOfHand ?? 0) / spreadOf(readings.map((one) => one.partOfHand ?? 0))).toBeCloseTo(
      1,
      1,
    );
    expect((errors?.stackHip ?? 0) / spreadOf(readings.map(({ stack }) => stack.hip))).toBeCloseTo(1, 1);
  });

  it('comes from placing twice, and rounds what is shown', () => {
    const second = map(STRAIGHT, ({ x, y }) => ({ x: x + 3, y: y - 3 }));
    expect(spreadOfPlacings(STRAIGHT, second).hip).toBeCloseTo(3 / Math.SQRT2, 9);
    expect(spreadOfPlacings(STRAIGHT, STRAIGHT).hip).toBe(0);
    expect(toErrorPlace(12.3456, 0.7)).toBe(12.3);
    expect(toErrorPlace(123.4, 12)).toBe(120);
    expect(toErrorPlace(12.34, 0)).toBe(12.34);
  });
});
