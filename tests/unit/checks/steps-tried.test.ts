import { describe, expect, it } from 'vitest';
import { standingsOf } from '#lib/checks/standings.ts';
import { daysSinceChange, stepBeingTried } from '#lib/checks/steps-tried.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryStep } from '#lib/domain/history.ts';
import { aHistory, aPlan, aPlanItem, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const aStep = (takenOn: number, over: Partial<HistoryStep> = {}): HistoryStep => ({
  kind: 'cut-volume',
  takenOn: day(takenOn),
  reviewOn: null,
  ladderId: 'pull',
  side: null,
  words: '',
  ...over,
});
const at = (steps: HistoryStep[], days: number, over: Parameters<typeof aHistory>[0] = {}) => {
  const view = buildView(aHistory({ steps, ...over }), evening(days));
  const standings = standingsOf(view);
  const [standing] = standings;
  if (!standing) throw new Error('nobody stands anywhere');
  return { view, standing, standings };
};
const tried = (...of: Parameters<typeof at>) => {
  const { view, standing } = at(...of);
  return stepBeingTried(view, standing, DEFAULT_LIMITS);
};
const since = (...of: Parameters<typeof at>) => {
  const { view, standing } = at(...of);
  return daysSinceChange(view, standing);
};

describe('a step that is being tried', () => {
  it('is tried until the day before its review', () => {
    const step = aStep(10, { reviewOn: day(20) });
    expect(tried([step], 19)).toEqual(step);
    expect(tried([step], 20)).toBeUndefined();
  });
  it('is tried for 28 days without a date of review', () => {
    expect(tried([aStep(10)], 37)).toBeDefined();
    expect(tried([aStep(10)], 38)).toBeUndefined();
  });
  it('is tried from the day it was taken on, not before', () => {
    expect(tried([aStep(10)], 10)).toBeDefined();
    expect(tried([aStep(10)], 9)).toBeUndefined();
  });
  it('is the newest, of two on one day the later by name, whatever their order', () => {
    const steps = [aStep(10), aStep(12, { kind: 'more-time' }), aStep(12, { kind: 'cut-volume' }), aStep(11)];
    expect(tried(steps, 15)).toMatchObject({ kind: 'more-time', takenOn: day(12) });
    expect(tried([...steps].reverse(), 15)).toMatchObject({ kind: 'more-time', takenOn: day(12) });
  });
  it('is none of another ladder', () => {
    expect(tried([aStep(10, { ladderId: 'stand' })], 15)).toBeUndefined();
  });
  it('speaks of its own side, and of both where it names both or none', () => {
    const apart = (side: HistoryStep['side']) => {
      const placements = (['left', 'right'] as const).map((one) => ({
        ladderId: 'pull',
        side: one,
        rungId: one === 'left' ? 'pull-1' : 'pull-2',
        from: day(0),
      }));
      const rungs = [1, 2].map((position) => ({ ...aRung(), id: `pull-${position}`, position }));
      const { view, standings } = at([aStep(10, { side })], 15, { placements, rungs });
      return standings.flatMap((one) => (stepBeingTried(view, one, DEFAULT_LIMITS) ? [one.side] : []));
    };
    expect(apart('left')).toEqual(['left']);
    expect(apart('right')).toEqual(['right']);
    expect(apart('both')).toEqual(['left', 'right']);
    expect(apart(null)).toEqual(['left', 'right']);
    expect(tried([aStep(10, { side: 'left' })], 15)).toBeDefined();
  });
});

describe('days since anything changed on a ladder', () => {
  it('are counted from the newest of placement, plan and step', () => {
    const plans = [aPlan(), aPlan({ version: 2, from: day(8), items: [aPlanItem({ sets: 4 })] })];
    expect(since([], 20)).toBe(20);
    expect(since([], 20, { plans })).toBe(12);
    expect(since([aStep(14)], 20, { plans })).toBe(6);
    expect(since([aStep(4)], 20, { plans })).toBe(12);
  });
});
