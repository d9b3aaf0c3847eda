import { describe, expect, it } from 'vitest';
import { hipAngleOf, partOfFullMoment, shoulderMoment } from '#lib/planning/ladders/lever-shape.ts';
import { partOfFull } from '#tests/published/values/winter-body.ts';

/*
 * Moments in body weight x height, worked out from print apart from this project: masses of Winter 2009, Biomechanics
 * and Motor Control of Human Movement, table 4.1; lengths of Drillis & Contini 1966; trunk level, straight arms.
 */
const WORKED_OUT = [
  ['tuck', { hip: 130, shank: -20, straddle: 0 }, 0.14],
  ['advanced tuck, heels folded', { hip: 90, shank: -45, straddle: 0 }, 0.1686],
  ['advanced tuck, shins level', { hip: 90, shank: 0, straddle: 0 }, 0.1739],
  ['straddle, 60 a side', { hip: 0, shank: 0, straddle: 60 }, 0.1903],
  ['open tuck', { hip: 60, shank: 0, straddle: 0 }, 0.1995],
  ['straddle, 45 a side', { hip: 0, shank: 0, straddle: 45 }, 0.2047],
  ['half-lay', { hip: 0, shank: 90, straddle: 0 }, 0.2067],
  ['straddle, 30 a side', { hip: 0, shank: 0, straddle: 30 }, 0.2157],
  ['full', { hip: 0, shank: 0, straddle: 0 }, 0.225],
] as const;

describe('the moment at the shoulder', () => {
  it.each(WORKED_OUT)('%s', (_name, shape, moment) => {
    expect(Math.abs(shoulderMoment(shape) - moment)).toBeLessThanOrEqual(6e-5);
  });

  it.each([
    [130, 0.14],
    [125, 0.1435],
    [120, 0.1473],
    [115, 0.1512],
    [110, 0.1554],
    [105, 0.1596],
    [100, 0.164],
    [95, 0.1684],
    [90, 0.1728],
  ])('opens with the hip: %i degrees', (hip, moment) => {
    expect(Math.abs(shoulderMoment({ hip, shank: -20, straddle: 0 }) - moment)).toBeLessThanOrEqual(6e-5);
  });

  it('turns the shoulder of 70 kg and 1.75 m with 270 N m in the full position', () => {
    expect(shoulderMoment({ hip: 0, shank: 0, straddle: 0 }) * 70 * 9.81 * 1.75).toBeCloseTo(270.4, 0);
  });

  it.each([[{ hip: 120, shank: -20 }], [{ hip: 90, shank: -45 }], [{ hip: 0, shank: 0, straddle: 45 }]])(
    'is the part of the full position that the body of the published tables gives: %o',
    (shape) => {
      expect(partOfFullMoment({ straddle: 0, ...shape })).toBeCloseTo(partOfFull(shape), 3);
    },
  );
});

describe('the hip angle of a part of the full moment', () => {
  it.each([130, 120, 110, 95])('finds %i degrees again', (hip) => {
    const part = partOfFullMoment({ hip, shank: -20, straddle: 0 });
    expect(hipAngleOf(part, { shank: -20, straddle: 0 })).toBe(hip);
  });

  it('says nothing of what no hip gives', () => {
    expect(hipAngleOf(0.3, { shank: -20, straddle: 0 })).toBeUndefined();
    expect(hipAngleOf(1.01, { shank: 0, straddle: 0 })).toBeUndefined();
    expect(hipAngleOf(0.8, { shank: 0, straddle: 90 })).toBeUndefined();
  });
});
