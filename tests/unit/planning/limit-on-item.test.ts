import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { limitOnItem, setsUnderLimit } from '#lib/planning/limit-on-item.ts';
import { aRung } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ weights: { 'wrist-back': 0.9, 'shoulder-overhead': 0.5, 'elbow-bending': 0.2 } });
const DATE = '2026-03-10';
function limit(over: Partial<HistoryLimit>): HistoryLimit {
  return {
    tissue: 'wrist-back',
    region: null,
    side: null,
    rule: 'none',
    percent: null,
    from: '2026-03-01',
    until: null,
    who: 'coach',
    ...over,
  };
}
const share = (limits: HistoryLimit[], line: Partial<Parameters<typeof limitOnItem>[1]> = {}) =>
  limitOnItem(limits, { rung: RUNG, side: 'both', ...line }, DATE, DEFAULT_LIMITS).share;

describe('what a limit leaves of a line', () => {
  it('is all of it without a limit, or where the limit names a tissue the rung hardly loads', () => {
    expect(share([])).toBe(1);
    expect(share([limit({ tissue: 'elbow-bending' })])).toBe(1);
  });

  it('is nothing under none, no floor and no overhead', () => {
    expect(share([limit({})])).toBe(0);
    expect(share([limit({ tissue: null, rule: 'no-floor' })])).toBe(0);
    expect(share([limit({ tissue: null, rule: 'no-overhead' })])).toBe(0);
    expect(share([limit({ tissue: null, region: 'wrist-back' })])).toBe(0);
  });

  it('is nothing of upside-down drills under no upside down, whatever they load, and all of others', () => {
    const held = [limit({ tissue: null, rule: 'no-upside-down' })];
    expect(share(held)).toBe(1);
    expect(share(held, { rung: { ...RUNG, upsideDown: true } })).toBe(0);
    expect(share(held, { rung: { ...RUNG, upsideDown: true }, support: 'parallel-bars', side: 'left' })).toBe(
      0,
    );
    expect(share(held, { rung: aRung({ weights: {}, upsideDown: true }) })).toBe(0);
    expect(share([limit({ tissue: null, rule: 'none' })], { rung: { ...RUNG, upsideDown: true } })).toBe(0);
  });

  it('is the percent under reduced, the strictest of several', () => {
    expect(share([limit({ rule: 'reduced', percent: 60 })])).toBe(0.6);
    expect(share([limit({ rule: 'reduced', percent: 60 }), limit({ rule: 'reduced', percent: 40 })])).toBe(
      0.4,
    );
    expect(share([limit({ rule: 'reduced', percent: null })])).toBe(0);
  });

  it('holds from its first to its last day', () => {
    expect(share([limit({ from: DATE, until: DATE })])).toBe(0);
    expect(share([limit({ from: '2026-03-11' })])).toBe(1);
    expect(share([limit({ until: '2026-03-09' })])).toBe(1);
  });

  it('holds on its side only; a line of both sides works each', () => {
    expect(share([limit({ side: 'left' })], { side: 'right' })).toBe(1);
    expect(share([limit({ side: 'left' })], { side: 'left' })).toBe(0);
    expect(share([limit({ side: 'left' })], { side: 'both' })).toBe(0);
    expect(share([limit({ side: 'middle' })], { side: 'right' })).toBe(0);
  });

  it('is all of it on a support that takes the load away', () => {
    expect(share([limit({})], { support: 'parallel-bars' })).toBe(1);
    expect(share([limit({})], { support: 'wedge' })).toBe(0);
  });

  it('is nothing on the floor under no floor, whatever spares the wrist there', () => {
    const floor = [limit({ tissue: null, rule: 'no-floor' })];
    expect(share(floor, { support: 'fists' })).toBe(0);
    expect(share(floor, { support: 'parallel-bars' })).toBe(1);
  });
});

describe('sets left under a limit', () => {
  it('are whole, and at least one while a part is left', () => {
    const left = (sets: number, part: number) => setsUnderLimit(sets, { share: part, limit: null });
    expect([left(5, 1), left(5, 0.5), left(4, 0.5), left(2, 0.1), left(4, 0)]).toEqual([5, 3, 2, 1, 0]);
  });
});
