import { describe, expect, it } from 'vitest';
import { loadsOf } from '#lib/checks/load-series.ts';
import { DEFAULT_LIMITS, limitsWith } from '#lib/checks/thresholds.ts';
import { totalUpTo, usualWeek } from '#lib/checks/usual-week.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aPlan, day, evening, threeAWeek } from '#tests/fixtures/history-builders.ts';

const viewOf = (checkIns: HistoryCheckIn[], days: number, over: Parameters<typeof aHistory>[0] = {}) =>
  buildView(aHistory({ checkIns, ...over }), evening(days));
const usualOf = (...view: Parameters<typeof viewOf>) => {
  const built = viewOf(...view);
  return usualWeek(built, loadsOf(built).session, DEFAULT_LIMITS);
};
/** 10, 20, 30 ... minutes in the sessions of the weeks: 150, 300, 450 ... AU a week. */
const rising = (weeks: number) =>
  threeAWeek(weeks, (days) => aCheckIn(days, { minutes: 10 * (1 + Math.floor(days / 7)) }));

describe('the usual week', () => {
  it('needs four ordinary weeks before the last seven days, the first day of the client with', () => {
    // Daily sessions, so that every day is known.
    const daily = Array.from({ length: 40 }, (_, days) => aCheckIn(days, { minutes: 20 }));
    expect(usualOf(daily, 34)).toMatchObject({ enough: true, usual: 700, weeks: 4 });
    expect(usualOf(daily, 33)).toEqual({ enough: false, weeks: 3, needed: 4 });
  });
  it('is the median of the newest eight', () => {
    // Weeks 1 to 11; on the last day of week 12 the newest are 4 to 11.
    expect(usualOf([...rising(12), aCheckIn(83)], 83)).toMatchObject({
      totals: [1650, 1500, 1350, 1200, 1050, 900, 750, 600],
    });
  });
  it('looks back ten weeks for them, no further', () => {
    // Of the ten weeks 2 to 11 seven have a day off; week 1 is the eleventh back.
    const off = (weeks: number[]) => ({
      absences: weeks.map((week) => ({
        kind: 'holiday' as const,
        from: day(7 * week - 1),
        to: day(7 * week - 1),
      })),
    });
    const on = (weeks: number[]) => usualOf([...rising(12), aCheckIn(83)], 83, off(weeks));
    expect(on([3, 4, 5, 6, 7, 8])).toMatchObject({ enough: true, totals: [1650, 1500, 1350, 300] });
    expect(on([2, 3, 4, 5, 6, 7, 8])).toEqual({ enough: false, weeks: 3, needed: 4 });
  });
  it('leaves out weeks with an easy day of the plan, and weeks of which a day is not known', () => {
    const easy = { plans: [aPlan({ easyWeeks: [day(28)] })] };
    const daily = (left: number[] = []) =>
      Array.from({ length: 49 }, (_, days) => aCheckIn(days, left.includes(days) ? { effort: null } : {}));
    expect(usualOf(daily(), 48)).toMatchObject({ weeks: 6 });
    expect(usualOf(daily(), 48, easy)).toMatchObject({ weeks: 5 });
    expect(usualOf(daily([30]), 48)).toMatchObject({ weeks: 5 });
    expect(usualOf(daily([28]), 48)).toMatchObject({ weeks: 5 });
    expect(usualOf(daily([34]), 48)).toMatchObject({ weeks: 5 });
  });
  it('is asked of one view for several series, days and limits', () => {
    const daily = Array.from({ length: 63 }, (_, days) =>
      aCheckIn(days, days === 30 ? { effort: null } : {}),
    );
    const view = viewOf(daily, 62);
    const { session, tissues } = loadsOf(view);
    const elbow = tissues.get('elbow-bending:left');
    const weeks = (...asked: Parameters<typeof usualWeek>) => usualWeek(...asked).weeks;
    expect(weeks(view, session, DEFAULT_LIMITS)).toBe(7);
    expect(elbow && weeks(view, elbow, DEFAULT_LIMITS)).toBe(8);
    expect(weeks(view, session, DEFAULT_LIMITS, 34)).toBe(4);
    expect(weeks(view, session, limitsWith({ 'week.usualOf': 5 }))).toBe(5);
    expect(weeks(view, session, DEFAULT_LIMITS)).toBe(7);
  });
});

describe('a total of days', () => {
  it('counts the days up to the last with it, and how many of them are known', () => {
    const { session } = loadsOf(
      viewOf([aCheckIn(0), aCheckIn(1, { effort: null }), aCheckIn(2), aCheckIn(3)], 4),
    );
    expect(totalUpTo(session, 3, 3)).toEqual({ total: 600, known: 2, of: 3 });
    expect(totalUpTo(session, 4, 7)).toEqual({ total: 900, known: 3, of: 7 });
  });
});
