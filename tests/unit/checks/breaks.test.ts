import { describe, expect, it } from 'vitest';
import { newestBreak } from '#lib/checks/breaks.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aRestDay, day, evening } from '#tests/fixtures/history-builders.ts';

const found = (checkIns: HistoryCheckIn[], last: number, off?: [number, number], endedWithin = 28) => {
  const absences = off ? [{ kind: 'holiday' as const, from: day(off[0]), to: day(off[1]) }] : [];
  return newestBreak(buildView(aHistory({ checkIns, absences }), evening(last)), {
    atLeast: 10,
    endedWithin,
  });
};
const trained = (...days: number[]) => days.map((each) => aCheckIn(each));

describe('the newest break', () => {
  it('is so many days without training of which so many were off', () => {
    expect(found(trained(0, 2, 13), 13, [3, 12])).toEqual({ from: 3, returned: 13, days: 10, off: 10 });
    expect(found(trained(0, 2, 12), 12, [3, 11])).toBeUndefined();
    // Eleven days, nine of them off, and the others told to be rest.
    expect(found([...trained(0, 2, 14), aRestDay(3), aRestDay(13)], 14, [4, 12])).toBeUndefined();
  });
  it('is silence longer than the longest gap before it, and no longer one', () => {
    expect(found(trained(0, 11, 23), 23)).toEqual({ from: 12, returned: 23, days: 11, off: 0 });
    // Ten days are as long as the gap before: the break is that one.
    expect(found(trained(0, 11, 22), 22)).toMatchObject({ returned: 11 });
    expect(found(trained(0, 2, 13), 13)).toMatchObject({ days: 10 });
    expect(found(trained(0, 2, 12), 12)).toBeUndefined();
    // Days off in the gap before are no silence.
    expect(found(trained(0, 14, 25), 25, [1, 10])).toMatchObject({ days: 10 });
  });
  it('is no silence where rest was told in it', () => {
    expect(found([...trained(0, 2, 13), aRestDay(8)], 13)).toBeUndefined();
  });
  it('counts as long as the return lies within the days asked', () => {
    const ended = trained(0, 2, 13, 15, 17, 19, 21);
    expect(found(ended, 22, undefined, 10)).toMatchObject({ returned: 13 });
    expect(found(ended, 23, undefined, 10)).toBeUndefined();
  });
  it('is not the time before the first training day, and none before somebody came back', () => {
    expect(found(trained(20, 21), 22)).toBeUndefined();
    expect(found(trained(20, 21), 22, [1, 15])).toBeUndefined();
    expect(found(trained(0, 2), 22)).toBeUndefined();
  });
  it('is the newer of two', () => {
    expect(found(trained(0, 11, 23), 23, [1, 10])).toMatchObject({ returned: 23 });
  });
});
