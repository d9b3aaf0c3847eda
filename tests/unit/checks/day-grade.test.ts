import { describe, expect, it } from 'vitest';
import { gradeAt } from '#lib/checks/day-grade.ts';
import { painSeries } from '#lib/checks/pain-series.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aPain, evening } from '#tests/fixtures/history-builders.ts';

const morning = (value: number) => aPain(value, { moment: 'morning' });
/** The grade of the last of these check-ins, one a day. */
function grade(days: HistoryPain[][], over: Partial<HistoryCheckIn> = {}, under18 = false) {
  const checkIns = days.map((pain, at) => aCheckIn(at, { pain, ...(at === days.length - 1 ? over : {}) }));
  const view = buildView(aHistory({ checkIns, client: { under18 } }), evening(days.length - 1));
  const [series] = painSeries(view);
  return series && gradeAt(view, series, days.length - 1, DEFAULT_LIMITS);
}

describe('the grade of a day', () => {
  it.each([
    ['stop from 6', [[aPain(6), morning(0)]], 'stop'],
    ['not under 6', [[aPain(5), morning(0)]], 'careful'],
    ['stop at a morning of 6', [[morning(6)]], 'stop'],
    ['reduce with a morning 2 above usual', [[morning(2)]], 'reduce'],
    ['not with one of 1 above', [[morning(1)]], 'fine'],
    ['reduce with 1 above on two mornings running', [[morning(1)], [morning(1)]], 'reduce'],
    ['not where the morning before was usual', [[morning(0)], [morning(1)]], 'fine'],
    ['not where this morning is usual', [[morning(1)], [morning(0)]], 'fine'],
    ['not where the morning before was not told', [[aPain(1)], [morning(1)]], 'fine'],
    ['unknown without a morning', [[aPain(2)]], 'unknown'],
    ['careful from 3', [[aPain(3), morning(0)]], 'careful'],
    ['fine under 3', [[aPain(2), morning(0)]], 'fine'],
    ['fine with a morning alone', [[morning(0)]], 'fine'],
  ] as const)('is %s', (_name, days, expected) => {
    expect(grade(days.map((pain) => [...pain]))).toBe(expected);
  });
  it('is stop with a danger sign', () => {
    const sign = {
      sign: 'numb-or-tingling' as const,
      goneWithinMinute: false,
      region: 'elbow-inner' as const,
      side: 'right' as const,
    };
    expect(grade([[aPain(1), morning(0)]], { dangerSigns: [sign] })).toBe('stop');
  });
  it('is one step stricter under 18, but for two mornings running', () => {
    expect(grade([[aPain(5), morning(0)]], {}, true)).toBe('stop');
    expect(grade([[morning(1)]], {}, true)).toBe('reduce');
    expect(grade([[aPain(2), morning(0)]], {}, true)).toBe('careful');
    expect(grade([[aPain(1), morning(0)]], {}, true)).toBe('fine');
  });
});
