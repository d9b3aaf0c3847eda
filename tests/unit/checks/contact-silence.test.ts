import { describe, expect, it } from 'vitest';
import { silenceOf } from '#lib/checks/contact-silence.ts';
import { buildView } from '#lib/checks/view.ts';
import { aCheckIn, aHistory, aRestDay, day, evening } from '#tests/fixtures/history-builders.ts';

const silence = (trained: number[], last: number, off?: [number, number], look = 30) => {
  const absences = off ? [{ kind: 'holiday' as const, from: day(off[0]), to: day(off[1]) }] : [];
  const checkIns = trained.map((days) => aCheckIn(days));
  return silenceOf(buildView(aHistory({ checkIns, absences }), evening(last)), look);
};

describe('how long a client has been silent', () => {
  it('is the days since the last check-in, and the longest time between two', () => {
    expect(silence([0, 2, 7, 9], 12)).toEqual({ lastDate: day(9), days: 3, longestGap: 5 });
    expect(silence([0, 2], 2)).toEqual({ lastDate: day(2), days: 0, longestGap: 2 });
  });
  it('leaves days off out of both', () => {
    expect(silence([0, 10, 11], 12, [2, 6])).toEqual({ lastDate: day(11), days: 1, longestGap: 5 });
    expect(silence([0, 3], 12, [5, 8])).toEqual({ lastDate: day(3), days: 5, longestGap: 3 });
  });
  it('looks at gaps that ended in the days it looks back, and is without one under two check-ins', () => {
    expect(silence([0, 9, 11], 14, undefined, 6)).toMatchObject({ longestGap: 9 });
    expect(silence([0, 9, 11], 15, undefined, 6)).toMatchObject({ longestGap: 2 });
    expect(silence([3], 5)).toEqual({ lastDate: day(3), days: 2, longestGap: 0 });
    expect(silence([], 5)).toBeUndefined();
  });
  it('counts a told rest day as a word', () => {
    const view = buildView(aHistory({ checkIns: [aCheckIn(0), aRestDay(4)] }), evening(6));
    expect(silenceOf(view, 30)).toEqual({ lastDate: day(4), days: 2, longestGap: 4 });
  });
});
