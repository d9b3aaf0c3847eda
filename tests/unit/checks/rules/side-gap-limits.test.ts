import { describe, expect, it } from 'vitest';
import { sideGap } from '#lib/checks/rules/side-gap.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRung, sets } from '#tests/fixtures/history-builders.ts';

const HOLD = aRung({
  name: 'One-arm hold',
  measure: 'hold',
  eachSide: true,
  pass: { sets: 3, target: 60, days: 3, tries: null },
});
/** One pair every third day, seconds left and right. */
const history = (pairs: readonly (readonly [number, number])[]) => {
  const checkIns = pairs.map(([left, right], at) =>
    aCheckIn(at * 3, {
      sets: [
        ...sets([left], { side: 'left', planned: 60 }),
        ...sets([right], { side: 'right', planned: 60 }),
      ],
    }),
  );
  return aHistory({ rungs: [HOLD], checkIns });
};
const on = (pairs: Parameters<typeof history>[0], over: Partial<Limits> = {}) =>
  judge(sideGap, history(pairs), 30, over);
const saidOf = (...args: Parameters<typeof on>) => said(theOutcome(on(...args)));

describe('side-gap on its limits', () => {
  it('needs a chance under the limit: lower on 6 of 6 days has one of 1 in 64', () => {
    const six = new Array<[number, number]>(6).fill([32, 40]);
    expect(saidOf(six, { 'sideGap.p': 1 / 64 })).toBe('clear');
    expect(saidOf(six, { 'sideGap.p': 0.0157 })).toBe('flagged act');
  });
  it('needs a gap larger than a side varies: 10 % behind where both vary by 10 % is clear', () => {
    // Right 40 s, off by +6, -6, +2, -2, 0 and 0: a standard deviation of 4 s (sample). Left always nine tenths of it.
    const varying = (mean: number) =>
      [6, -6, 2, -2, 0, 0].map((off): [number, number] => [0.9 * (mean + off), mean + off]);
    expect(saidOf(varying(40))).toBe('clear');
    expect(saidOf(varying(41))).toBe('flagged watch');
    expect(theFinding(on(varying(41))).evidence).toMatchObject({ percent: 10, variation: 9.76 });
  });
  it('speaks of a draw of days only where a chance over one half is let through, and then for the left', () => {
    const draw = [
      ...new Array<[number, number]>(6).fill([40, 39.9]),
      ...new Array<[number, number]>(6).fill([34, 40]),
    ];
    const onDay36 = (p: number) => judge(sideGap, history(draw), 36, { 'sideGap.p': p });
    expect(said(theOutcome(onDay36(0.05)))).toBe('clear');
    // Six or more of twelve by the toss of a coin: 0.613.
    expect(said(theOutcome(onDay36(0.61)))).toBe('clear');
    expect(theFinding(onDay36(0.62)).sentence).toBe(
      'One-arm hold: left **15 %** behind, 34 s against 40 s, lower on 6 of 12 days.',
    );
  });
});
