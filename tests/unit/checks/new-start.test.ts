import { describe, expect, it } from 'vitest';
import { daysHere, isAwayAsNew, newStartAt } from '#lib/checks/new-start.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aRestDay, day, evening } from '#tests/fixtures/history-builders.ts';

const view = (checkIns: HistoryCheckIn[], last: number) =>
  buildView(aHistory({ checkIns, absences: [] }), evening(last));
const startOf = (checkIns: HistoryCheckIn[], last: number) => {
  const seen = view(checkIns, last);
  return seen.days[newStartAt(seen)]?.date;
};

describe('away for twelve weeks', () => {
  it('is 84 days without a check-in up to tonight, and none where nothing was ever told', () => {
    expect(isAwayAsNew(view([aCheckIn(0), aCheckIn(5)], 88))).toBe(false);
    expect(isAwayAsNew(view([aCheckIn(0), aCheckIn(5)], 89))).toBe(true);
    expect(isAwayAsNew(view([aCheckIn(0), aRestDay(5)], 88))).toBe(false);
    expect(isAwayAsNew(view([aCheckIn(0), aRestDay(5)], 89))).toBe(true);
    expect(isAwayAsNew(view([], 120))).toBe(false);
    const joined = buildView(aHistory({ client: { joinedAt: `${day(0)}T08:00:00.000Z` } }), evening(120));
    expect(isAwayAsNew(joined)).toBe(false);
  });

  it('is over with the first training, from which the first weeks run', () => {
    expect(startOf([aCheckIn(0), aCheckIn(5), aCheckIn(89)], 90)).toBe(day(0));
    const straight = view([aCheckIn(0), aCheckIn(5), aCheckIn(90), aCheckIn(92)], 92);
    expect(straight.days[newStartAt(straight)]?.date).toBe(day(90));
    expect(daysHere(straight)).toBe(3);
    expect(isAwayAsNew(straight)).toBe(false);
  });

  it('a day told as rest on the return hides no return; told all along, it is no absence', () => {
    const back = [aCheckIn(0), aCheckIn(5), aRestDay(100), aCheckIn(102), aCheckIn(104)];
    expect(isAwayAsNew(view(back, 101))).toBe(true);
    expect(isAwayAsNew(view(back, 102))).toBe(false);
    expect(startOf(back, 104)).toBe(day(102));
    const told = [aCheckIn(0), aRestDay(40), aRestDay(80), aCheckIn(120)];
    expect(startOf(told, 121)).toBe(day(0));
  });

  it('is seen where everything told lies before the days that are looked at', () => {
    const client = { joinedAt: `${day(0)}T08:00:00.000Z` };
    const away = buildView(aHistory({ client, checkIns: [aCheckIn(0), aCheckIn(5)] }), evening(300));
    expect(isAwayAsNew(away)).toBe(true);
  });
});
