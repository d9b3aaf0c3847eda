import { describe, expect, it } from 'vitest';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';

/*
 * Gravity about the shoulder of a level, rigid trunk, as a part of body weight x height:
 *   M = k0 + (A cos hip + B cos shank) cos straddle.
 * k0, A, B derived from the body-segment masses and mass centres of D. A. Winter, Biomechanics and Motor
 * Control of Human Movement, table 4.1, with the lengths of Drillis and Contini 1966; the full position
 * comes to 0.22505. Angles in degrees: hip 0 = straight, shank 0 = level, straddle a side.
 */
const [K0, A, B] = [0.15564, 0.05111, 0.0183];
const cos = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
const moment = (hip: number, shank: number, straddle = 0) =>
  K0 + (A * cos(hip) + B * cos(shank)) * cos(straddle);
const FULL = moment(0, 0);
const TUCK = moment(130, -20);
const ADVANCED = moment(90, 0);
const FOLDED = moment(90, -45);

/** Part of the full moment by position. */
const POSITIONS = {
  tuck: TUCK / FULL,
  open120: moment(120, -20) / FULL,
  open110: moment(110, -20) / FULL,
  open100: moment(100, -20) / FULL,
  advanced: ADVANCED / FULL,
  oneLegTucked: (FULL + TUCK) / 2 / FULL,
  straddle60: moment(0, 0, 60) / FULL,
  oneLegAdvanced: (FULL + FOLDED) / 2 / FULL,
  straddle45: moment(0, 0, 45) / FULL,
  halfLay: moment(0, 90) / FULL,
  straddle30: moment(0, 0, 30) / FULL,
  full: 1,
};

const weight = (key: string, tissue: Tissue) =>
  STARTER_LIBRARY.ladders.flatMap((ladder) => ladder.rungs).find((rung) => rung.key === key)?.weights[tissue];

/** Half a hundredth of rounding in the library, and a little more for the published rounding of k0, A, B. */
const ROUNDING = 0.0051;

describe('stress profiles against the moments of the body', () => {
  it('the model gives the moments worked out for the Winter masses', () => {
    expect(FULL).toBeCloseTo(0.22505, 5);
    expect(TUCK).toBeCloseTo(0.14, 3);
    expect(ADVANCED).toBeCloseTo(0.1739, 3);
    expect(moment(0, 0, 45)).toBeCloseTo(0.2047, 3);
    expect(moment(115, -20)).toBeCloseTo(0.1512, 3);
  });

  it.each([
    ['PL.2', POSITIONS.tuck],
    ['PL.4', POSITIONS.open120],
    ['PL.5', POSITIONS.open110],
    ['PL.6', POSITIONS.open100],
    ['PL.7', POSITIONS.advanced],
    ['PL.8', POSITIONS.oneLegTucked],
    ['PL.9', POSITIONS.straddle60],
    ['PL.10', POSITIONS.oneLegAdvanced],
    ['PL.11', POSITIONS.straddle45],
    ['PL.12', POSITIONS.halfLay],
    ['PL.13', POSITIONS.straddle30],
    ['PL.15', POSITIONS.full],
  ])('planche %s loads the shoulder forward by its part of the full moment', (key, part) => {
    expect(Math.abs((weight(key, 'shoulder-forward') ?? 0) - part)).toBeLessThanOrEqual(ROUNDING);
  });

  it.each([
    ['LV.2', 'upper-back', POSITIONS.tuck],
    ['LV.5', 'upper-back', POSITIONS.advanced],
    ['LV.9', 'upper-back', POSITIONS.straddle45],
    ['LV.11', 'upper-back', POSITIONS.full],
    ['BK.3', 'shoulder-behind', POSITIONS.tuck],
    ['BK.4', 'shoulder-behind', POSITIONS.advanced],
    ['BK.6', 'shoulder-behind', POSITIONS.straddle45],
    ['BK.7', 'shoulder-behind', POSITIONS.full],
  ] as const)('lever %s loads %s by its part of the full moment', (key, tissue, part) => {
    expect(Math.abs((weight(key, tissue) ?? 0) - part)).toBeLessThanOrEqual(ROUNDING);
  });

  it('the shoulder-forward weight never falls along the planche ladder', () => {
    const planche = STARTER_LIBRARY.ladders.find((ladder) => ladder.key === 'PL');
    const weights = planche?.rungs.map((rung) => rung.weights['shoulder-forward'] ?? 0) ?? [];
    expect(weights).toHaveLength(15);
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
  });

  it('hands carry what was measured or worked out', () => {
    const share = (key: string) =>
      STARTER_LIBRARY.ladders.flatMap((ladder) => ladder.rungs).find((rung) => rung.key === key)?.share;
    // Front support, own statics with Winter masses 0.7127, de Leva men 0.7004.
    expect(share('H2.1')).toBeCloseTo(0.7127, 2);
    // Push-up on the floor, men: static top 0.670, static bottom 0.746 (Mier et al. 2014); the library takes between.
    expect(share('U1.2')).toBeGreaterThan(0.67);
    expect(share('U1.2')).toBeLessThan(0.746);
    // Pike with feet hip-high 0.8612, pike on the floor 0.538, own statics with Winter masses.
    expect(share('H2.3')).toBeCloseTo(0.8612, 2);
    expect(Math.abs((share('H2.2') ?? 0) - 0.538)).toBeLessThan(0.01);
    // What moves in a hanging or dipping rep: 1 - 2 x (forearm + hand) = 0.956, Winter masses.
    expect(share('PU.6')).toBeCloseTo(0.956, 2);
  });
});
