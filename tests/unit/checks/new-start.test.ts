import { describe, expect, it } from 'vitest';
import { daysHere, isAwayAsNew, newStartAt } from '#lib/checks/new-start.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aRestDay, day, evening } from '#tests/fixtures/history-builders.ts';

const view = (checkIns: HistoryCheckIn[], last: number) =>
  buildView(aHistory({ checkIns, absences: [] }), evening(last));

describe('away for twelve weeks', () => {
  it('is 84 days without a check-in up to tonight, and none where nothing was ever told', () => {
    expect(isAwayAsNew(view([aCheckIn(0), aCheckIn(5)], 88))).toBe(false);
    expect(isAwayAsNew(view([aCheckIn(0), aCheckIn(5)], 89))).toBe(true);
    expect(isAwayAsNew(view([aCheckIn(0), aRestDay(5)], 88))).toBe(false);
    expect(isAwayAsNew(view([aCheckIn(0), aRestDay(5)], 89))).toBe(true);
    expect(isAwayAsNew(view([], 120))).toBe(false);
  });

  it('is over with the first check-in, and first weeks run from the first training day', () => {
    const back = [aCheckIn(0), aCheckIn(5), aRestDay(100), aCheckIn(102), aCheckIn(104)];
    expect(isAwayAsNew(view(back, 100))).toBe(false);
    const now = view(back, 104);
    expect(isAwayAsNew(now)).toBe(false);
    expect(newStartAt(now)).toBe(0); // something was told before the training: nobody was without a word for so long
    const straight = view([aCheckIn(0), aCheckIn(5), aCheckIn(102), aCheckIn(104)], 104);
    expect(straight.days[newStartAt(straight)]?.date).toBe(day(102));
    expect(daysHere(straight)).toBe(3);
  });
});
