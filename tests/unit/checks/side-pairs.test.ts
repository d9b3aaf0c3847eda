import { describe, expect, it } from 'vitest';
import { rungDays } from '#lib/checks/rung-days.ts';
import { comparedDays, percentBehind, sidePairs } from '#lib/checks/side-pairs.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistorySet } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aRung, day, evening, sets } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ eachSide: true, measure: 'hold', pass: { sets: 2, target: 20, days: 2, tries: null } });
const side = (name: 'left' | 'right', values: number[], over: Partial<HistorySet> = {}) =>
  sets(values, { side: name, planned: null, ...over });
const daysOf = (...days: HistorySet[][]) => {
  const checkIns = days.map((done, at) => aCheckIn(at, { sets: done }));
  return rungDays(buildView(aHistory({ rungs: [RUNG], checkIns }), evening(days.length)), 'pull-1');
};
const pairs = (...days: HistorySet[][]) => sidePairs(daysOf(...days), RUNG);

describe('left and right of one day', () => {
  it('are compared in as many first sets as both have', () => {
    expect(pairs([...side('left', [10, 14, 6]), ...side('right', [16, 18])])).toEqual([
      { date: day(0), left: 12, right: 17 },
    ]);
  });
  it('leave out sets that were not clean, and days of one side', () => {
    const fault = side('left', [2], { index: 5, clean: false });
    expect(pairs([...side('left', [10]), ...fault, ...side('right', [16, 18])])).toEqual([
      { date: day(0), left: 10, right: 16 },
    ]);
    expect(pairs(side('left', [10, 14]), side('right', [10]))).toEqual([]);
  });
  it('say nothing where every set reached its target, the planned one or that of the pass mark', () => {
    const day0 = [...side('left', [20]), ...side('right', [25])];
    const day1 = [...side('left', [19]), ...side('right', [25])];
    expect(pairs(day0, day1)).toEqual([{ date: day(1), left: 19, right: 25 }]);
    expect(comparedDays(daysOf(day0, day1), RUNG)).toMatchObject([
      { pair: { date: day(0) }, saysNothing: true },
      { pair: { date: day(1) }, saysNothing: false },
    ]);
    const planned = [...side('left', [12], { planned: 12 }), ...side('right', [15], { planned: 12 })];
    expect(pairs(planned)).toEqual([]);
  });
});

describe('percent behind', () => {
  it('are of the larger side, and negative for the one ahead', () => {
    const pair = { date: day(0), left: 15, right: 20 };
    expect([percentBehind(pair, 'left'), percentBehind(pair, 'right')]).toEqual([25, -25]);
  });
  it('are none where both sides have nothing', () => {
    expect(percentBehind({ date: day(0), left: 0, right: 0 }, 'left')).toBe(0);
  });
});
