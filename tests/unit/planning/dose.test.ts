import { describe, expect, it } from 'vitest';
import { type DayResult, proposeDose, proposePyramid } from '#lib/planning/dose.ts';
import { aRung } from '#tests/fixtures/history-builders.ts';

const pass = (sets: number, target: number) => ({ sets, target, days: 2, tries: null });
const REPS = aRung({ pass: pass(5, 8) });
const HOLD = aRung({ measure: 'hold', family: 'straight-arm-push', pass: pass(4, 15) });
const BALANCE = aRung({ measure: 'hold', family: 'balance', pass: pass(3, 60) });
const days = (...values: number[][]): DayResult[] => values.map((one) => ({ values: one, whole: false }));
const whole = (...values: number[][]): DayResult[] => values.map((one) => ({ values: one, whole: true }));
const said = (...asked: Parameters<typeof proposeDose>) => {
  const { sets, target } = proposeDose(...asked);
  return `${sets} x ${target}`;
};

// All of it is common practice of the trade, without a published source.
describe('a dose from the last results', () => {
  it('of strength is 4 x 5 reps, 5 sets once two days were whole, fewer reps where fewer are clean', () => {
    expect(said(REPS, [])).toBe('4 x 5');
    expect(said(REPS, whole([5, 5, 5, 5], [5, 5, 5, 5]))).toBe('5 x 5');
    expect(said(REPS, days([3, 2, 2], [3, 3, 2]))).toBe('4 x 3');
    expect(said(aRung({ pass: pass(3, 4) }), [])).toBe('4 x 4');
  });

  it('of balance climbs from tries over 2-3 s, 5-10 s to 20-30 s', () => {
    const best = (seconds: number) => said(BALANCE, days([seconds, 1]));
    expect([0, 1.5, 2, 5, 10, 20, 40].map(best)).toEqual([
      '5 x 3',
      '5 x 3',
      '5 x 5',
      '5 x 10',
      '4 x 20',
      '3 x 30',
      '3 x 30',
    ]);
  });

  it('looks at the last three days only, and never asks more than the pass mark in a set', () => {
    expect(said(BALANCE, days([3], [3], [3], [40], [40], [40]))).toBe('5 x 5');
    expect(said(aRung({ measure: 'hold', family: 'balance', pass: pass(3, 20) }), days([25]))).toBe('3 x 20');
  });

  it('of a new strength hold starts at 6 s, later at what was clean', () => {
    expect(said(HOLD, [])).toBe('4 x 6');
    expect(said(HOLD, days([9, 8], [11], [10]))).toBe('4 x 10');
  });

  it('of a range or of tries is the pass mark', () => {
    expect(said(aRung({ measure: 'range-down', pass: pass(1, -10) }), days([5]))).toBe('1 x -10');
    expect(said(aRung({ measure: 'made-tried', pass: { ...pass(1, 8), tries: 10 } }), [])).toBe('1 x 8');
  });

  it('is always marked as common practice', () => {
    expect(proposeDose(REPS, []).source).toBe('common practice, no source');
  });
});

describe('a pyramid of two rungs', () => {
  it('starts at 6 s beside three of the easier one once that is held for 12 s', () => {
    const both = proposePyramid(HOLD, { ...HOLD, id: 'harder' }, days([13, 12, 14], [12, 13]));
    expect(both?.easier).toMatchObject({ sets: 3, target: 13 });
    expect(both?.harder).toMatchObject({ sets: 4, target: 6, source: 'common practice, no source' });
  });

  it('is not proposed before that, without results, or for reps', () => {
    expect(proposePyramid(HOLD, HOLD, days([11, 11]))).toBeUndefined();
    expect(proposePyramid(HOLD, HOLD, [])).toBeUndefined();
    expect(proposePyramid(REPS, REPS, days([15]))).toBeUndefined();
  });
});
