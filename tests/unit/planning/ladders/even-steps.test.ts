import { describe, expect, it } from 'vitest';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import { evenSteps } from '#lib/planning/ladders/even-steps.ts';
import { guessShape } from '#lib/planning/ladders/guess-shape.ts';
import { shoulderMoment } from '#lib/planning/ladders/lever-shape.ts';
import { momentTissue } from '#lib/planning/ladders/moment-tissue.ts';

const TUCK = { hip: 130, shank: -20, straddle: 0 };
const ADVANCED = { hip: 90, shank: 0, straddle: 0 };
const FULL = { hip: 0, shank: 0, straddle: 0 };

describe('steps even in load', () => {
  it.each([2, 3, 5, 8, 11])('%i steps add the same moment each, and end on the shape asked for', (count) => {
    const { steps } = evenSteps({ from: TUCK, to: ADVANCED, count }, { rounded: false });
    expect(steps).toHaveLength(count);
    const moments = [shoulderMoment(TUCK), ...steps.map((step) => step.moment)];
    const added = moments.slice(1).map((moment, index) => moment - (moments[index] ?? 0));
    // Tuck to advanced tuck: 0.1400 to 0.1739 of body weight x height (Winter 2009, Drillis & Contini 1966).
    for (const each of added) expect(each).toBeCloseTo((0.1739 - 0.14) / count, 4);
    expect(Math.max(...added) - Math.min(...added)).toBeLessThan(1e-9);
    expect(steps.at(-1)?.shape).toEqual(ADVANCED);
  });

  it('are not even in degrees: 90 degrees to straight in two is 57, not 45', () => {
    const { steps } = evenSteps({ from: ADVANCED, to: FULL, count: 2 });
    // By hand: cos(h) = 1/2, so h = 60 with shank and straddle alike in both shapes.
    expect(steps[0]?.shape).toEqual({ hip: 60, shank: 0, straddle: 0 });
    // Half of the way from 0.17394 to 0.22505.
    expect(steps[0]?.moment).toBeCloseTo(0.1995, 4);
  });

  it('tells the rise over the step before and the part of the full position', () => {
    const { steps } = evenSteps({ from: TUCK, to: { ...TUCK, hip: 125 }, count: 1 });
    expect(steps[0]?.rise).toBeCloseTo(0.025, 3);
    expect(steps[0]?.part).toBeCloseTo(0.638, 3);
  });

  it('are rounded to tenths of a degree, with the moment of those tenths', () => {
    const tenth = (angle: number) => Math.round(angle * 10) / 10;
    const { steps } = evenSteps({ from: TUCK, to: ADVANCED, count: 7 });
    expect(steps.some(({ shape }) => !Number.isInteger(shape.hip))).toBe(true);
    for (const { shape, moment } of steps) {
      expect(shape).toEqual({
        hip: tenth(shape.hip),
        shank: tenth(shape.shank),
        straddle: tenth(shape.straddle),
      });
      expect(moment).toBe(shoulderMoment(shape));
      expect(Object.is(shape.shank, -0)).toBe(false);
    }
  });

  // Moments of the hip angles at shank -20, in body weight x height: own statics worked out apart from this project,
  // masses of Winter 2009, lengths of Drillis & Contini 1966. The ends of each way are rungs of the library.
  it.each([
    [130, 0.14, 120, 0.1473, 7],
    [120, 0.1473, 110, 0.1554, 7],
    [110, 0.1554, 100, 0.164, 7],
    [130, 0.14, 90, 0.1728, 8],
  ])('of %i° (%f) to %i° (%f) are %i that add the same within a tenth', (low, least, high, most, count) => {
    const at = (hip: number) => ({ hip, shank: -20, straddle: 0 });
    const { steps } = evenSteps({ from: at(low), to: at(high), count });
    for (const [index, step] of steps.entries()) {
      expect(Math.abs(step.moment - (least + ((most - least) * (index + 1)) / count))).toBeLessThan(1.2e-4);
      expect(Math.abs(step.added / ((most - least) / count) - 1)).toBeLessThan(0.1);
    }
    // What whole degrees would do to the same steps.
    const whole = [low, ...steps.map(({ shape }) => Math.round(shape.hip))].map((hip) =>
      shoulderMoment(at(hip)),
    );
    const added = whole.slice(1).map((moment, index) => moment - (whole[index] ?? 0));
    if (count < 8) expect(Math.max(...added) / Math.min(...added)).toBeGreaterThan(1.8);
  });

  it('stay even in tenths of a degree where hip and shin both change', () => {
    const opened = { hip: 100, shank: 90, straddle: 0 };
    const added = evenSteps({ from: opened, to: ADVANCED, count: 3 }).steps.map((step) => step.added);
    const spread = Math.max(...added) - Math.min(...added);
    const mean = added.reduce((sum, each) => sum + each, 0) / added.length;
    expect(spread / mean).toBeLessThan(0.005);
  });

  it('are none where the second shape is no harder, or the load falls on the way', () => {
    expect(evenSteps({ from: ADVANCED, to: TUCK, count: 3 })).toEqual({ steps: [], problem: 'not-harder' });
    expect(evenSteps({ from: TUCK, to: TUCK, count: 3 })).toEqual({ steps: [], problem: 'not-harder' });
    const [folded, lowered] = [
      { hip: 60, shank: -90, straddle: 0 },
      { hip: -60, shank: 80, straddle: 0 },
    ];
    expect(evenSteps({ from: folded, to: lowered, count: 3 }).problem).toBe('not-steady');
  });
});

describe('a first guess of the shape of a rung', () => {
  const planche = STARTER_LIBRARY.ladders.find((ladder) => ladder.key === 'PL')?.rungs ?? [];
  const guess = (key: string) => {
    const rung = planche.find((one) => one.key === key);
    return guessShape(rung?.name ?? '', rung?.weights['shoulder-forward']);
  };

  it('reads the angles that a name says, else the weight', () => {
    expect(guess('PL.2')).toEqual(TUCK);
    expect(guessShape('Advanced tuck', undefined)).toEqual(ADVANCED);
    // 0.69 of the full moment, the weight of "opened to 110°": 0.1554 of 0.2250.
    expect(guessShape('Opened further', 0.69)).toEqual({ hip: 110, shank: -20, straddle: 0 });
    expect(guessShape('Opened to 119.6°', 0.62)).toEqual({ hip: 119.6, shank: -20, straddle: 0 });
    expect(guess('PL.4')).toEqual({ hip: 120, shank: -20, straddle: 0 });
    expect(guess('PL.7')).toEqual(ADVANCED);
    expect(guess('PL.11')).toEqual({ hip: 0, shank: 0, straddle: 45 });
    expect(guess('PL.14')).toEqual(FULL);
  });

  it('says nothing where a name means a shape of two different legs', () => {
    expect(guess('PL.8')).toBeUndefined();
    expect(guessShape('Held well', undefined)).toBeUndefined();
  });

  it('knows which tissue carries the moment', () => {
    const heaviest = (key: string) =>
      momentTissue(
        STARTER_LIBRARY.ladders.flatMap((ladder) => ladder.rungs).find((rung) => rung.key === key)?.weights ??
          {},
      );
    expect([heaviest('PL.4'), heaviest('LV.4'), heaviest('BK.4')]).toEqual([
      'shoulder-forward',
      'upper-back',
      'shoulder-behind',
    ]);
    expect(momentTissue({ 'wrist-back': 1 })).toBeUndefined();
  });
});
