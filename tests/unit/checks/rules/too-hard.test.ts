import { describe, expect, it } from 'vitest';
import { tooHard } from '#lib/checks/rules/too-hard.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aPlanItem, aRung, day, sets } from '#tests/fixtures/history-builders.ts';

const hard = (days: number) => aCheckIn(days, { sets: sets([5, 5, 3]) });
const fine = (days: number) => aCheckIn(days);
const saidOf = (checkIns: HistoryCheckIn[], over = {}) =>
  said(theOutcome(judge(tooHard, aHistory({ checkIns, ...over }), 20)));

describe('too-hard', () => {
  it('speaks from the second training day, when both were hard', () => {
    const finding = theFinding(judge(tooHard, aHistory({ checkIns: [hard(0), hard(2)] }), 3));
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      evidence: { broken: 2, planned: 6, hardDays: 2 },
    });
    expect(finding.sentence).toBe(
      'Pull-up: **2 of 6** planned sets cut short, not clean or failed, on 2 of the last 2 training days.',
    );
    expect(finding.step.kind).toBe('one-rung-back');
  });
  it('counts what is missing', () => {
    expect(saidOf([hard(0)])).toBe('not-enough-history: 1 of 2 training days on this rung');
  });
  it('wants 3 of the last 4, or all of fewer', () => {
    expect(saidOf([hard(0), fine(2)])).toBe('clear');
    expect(saidOf([hard(0), hard(2), fine(4)])).toBe('clear');
    expect(saidOf([hard(0), hard(2), fine(4), hard(6)])).toBe('flagged watch');
    expect(saidOf([hard(0), fine(2), fine(4), hard(6)])).toBe('clear');
    expect(saidOf([hard(0), hard(2), hard(4), fine(6), fine(8)])).toBe('clear');
  });
  it('draws the line at a third of the planned sets', () => {
    const four = (days: number) => aCheckIn(days, { sets: sets([5, 5, 5, 3]) });
    expect(saidOf([four(0), four(2)])).toBe('clear');
    const six = (days: number) => aCheckIn(days, { sets: sets([5, 5, 5, 5, 3, 3]) });
    expect(saidOf([six(0), six(2)])).toBe('flagged watch');
  });
  it('counts sets that were not clean or not done, and none beyond the plan', () => {
    const unclean = (days: number) =>
      aCheckIn(days, { sets: [...sets([5, 5]), ...sets([5], { index: 2, clean: false })] });
    const notDone = (days: number) =>
      aCheckIn(days, { sets: [...sets([5, 5]), ...sets([null], { index: 2, how: 'not-done' })] });
    const beyond = (days: number) =>
      aCheckIn(days, { sets: [...sets([5, 5, 5]), ...sets([1, 1], { planned: null })] });
    expect(saidOf([unclean(0), unclean(2)])).toBe('flagged watch');
    expect(saidOf([notDone(0), notDone(2)])).toBe('flagged watch');
    expect(saidOf([beyond(0), beyond(2)])).toBe('clear');
  });
  it('looks at what the measure means: ranges are never cut short, tries are when none was made or too few tried', () => {
    const one = (measure: 'range-up' | 'made-tried') => ({ rungs: [aRung({ measure })] });
    expect(saidOf([hard(0), hard(2)], one('range-up'))).toBe('clear');
    const tries = (value: number, tried: number) => (days: number) =>
      aCheckIn(days, { sets: sets([value], { planned: 8, tried }) });
    expect(saidOf([tries(3, 8)(0), tries(3, 8)(2)], one('made-tried'))).toBe('clear');
    expect(saidOf([tries(0, 8)(0), tries(0, 8)(2)], one('made-tried'))).toBe('flagged watch');
    expect(saidOf([tries(3, 4)(0), tries(3, 4)(2)], one('made-tried'))).toBe('flagged watch');
    // As many made as planned: whole, whatever was written down as tried.
    expect(saidOf([tries(7, 4)(0), tries(7, 4)(2)], one('made-tried'))).toBe('flagged watch');
    expect(saidOf([tries(8, 4)(0), tries(8, 4)(2)], one('made-tried'))).toBe('clear');
  });
  it('looks at rungs in the plan and rungs stood on, since they are there', () => {
    const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(1) }];
    expect(saidOf([hard(0), hard(2)], { placements })).toContain('1 of 2');
    const plans = [aPlan({ items: [aPlanItem(), aPlanItem({ rungId: 'pull-2' })] })];
    const rungs = [aRung(), aRung({ id: 'pull-2', position: 2 })];
    expect(
      judge(tooHard, aHistory({ checkIns: [hard(0), hard(2)], plans, rungs }), 20).map(
        (each) => each.subject.key,
      ),
    ).toEqual(['pull:pull-1', 'pull:pull-2']);
    expect(judge(tooHard, aHistory({ checkIns: [hard(0), hard(2)], plans: [], placements: [] }), 20)).toEqual(
      [],
    );
  });
  it('looks at days with planned sets only', () => {
    const unplanned = (days: number) => aCheckIn(days, { sets: sets([2, 2, 2], { planned: null }) });
    expect(saidOf([hard(0), hard(2), unplanned(4), unplanned(6)])).toBe('flagged watch');
  });
});
