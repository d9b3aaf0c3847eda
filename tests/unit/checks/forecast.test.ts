import { describe, expect, it } from 'vitest';
import { forecast } from '#lib/checks/forecast.ts';
import { forecastSentence } from '#lib/checks/forecast-words.ts';
import { passedRungs } from '#lib/checks/passed-rungs.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import { DEFAULT_LIMITS, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { timeToGoal } from '#lib/checks/time-to-goal.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryPlacement } from '#lib/domain/history.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { aHistory, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const RUNGS = [1, 2, 3, 4, 5].map((position) =>
  aRung({ id: `pull-${position}`, position, name: `Pull ${position}`, usualWeeks: 4 }),
);
const on = (rung: number, days: number, side: HistoryPlacement['side'] = 'both'): HistoryPlacement => ({
  ladderId: 'pull',
  side,
  rungId: `pull-${rung}`,
  from: day(days),
});
const viewOf = (placements: HistoryPlacement[], days: number, over: Partial<ClientHistory> = {}) =>
  buildView({ ...aHistory({ rungs: RUNGS, placements }), ...over }, evening(days));
const said = (placements: HistoryPlacement[], days: number, over: Partial<ClientHistory> = {}) => {
  const view = viewOf(placements, days, over);
  const [standing] = standingsOf(view);
  return standing && forecast(view, standing, RUNGS, DEFAULT_LIMITS);
};
const passed = (placements: HistoryPlacement[], days: number, over: Partial<ClientHistory> = {}) =>
  passedRungs(viewOf(placements, days, over), { ladderId: 'pull', side: 'both' }, RUNGS, DEFAULT_LIMITS).map(
    (time) => `${time.days} of ${time.usualDays}`,
  );

describe('rungs passed here', () => {
  it('are timed from a placement to the next higher one, up to the evening', () => {
    expect(passed([on(1, 0), on(2, 30), on(3, 50)], 60)).toEqual(['30 of 28', '20 of 28']);
    expect(passed([on(1, 0), on(2, 30), on(3, 50)], 50)).toEqual(['30 of 28', '20 of 28']);
    expect(passed([on(1, 0), on(2, 30), on(3, 50)], 49)).toEqual(['30 of 28']);
  });
  it('leave out moves back, and take a skip as one time for all', () => {
    expect(passed([on(2, 0), on(1, 30), on(2, 50)], 60)).toEqual(['20 of 28']);
    expect(passed([on(1, 0), on(4, 40)], 60)).toEqual(['40 of 84']);
  });
  it('leave out corrections of under 3 days, and a first rung that was too low', () => {
    expect(passed([on(1, 0), on(2, 30), on(3, 33)], 60)).toEqual(['30 of 28', '3 of 28']);
    expect(passed([on(1, 0), on(2, 30), on(3, 32)], 60)).toEqual(['30 of 28']);
    expect(passed([on(1, 0), on(2, 15)], 60)).toEqual(['15 of 28']);
    expect(passed([on(1, 0), on(2, 14)], 60)).toEqual([]);
  });
  it('do not count a pause, but other days off', () => {
    const off = (kind: 'pause' | 'holiday') => ({ absences: [{ kind, from: day(5), to: day(14) }] });
    expect(passed([on(1, 0), on(2, 30)], 60, off('pause'))).toEqual(['20 of 28']);
    expect(passed([on(1, 0), on(2, 30)], 60, off('holiday'))).toEqual(['30 of 28']);
  });
  it('are those of the slower side where the sides went apart', () => {
    const apart = [on(1, 0), on(2, 20, 'left'), on(2, 35, 'right')];
    expect(passed(apart, 60)).toEqual(['35 of 28']);
    expect(passedRungs(viewOf(apart, 60), { ladderId: 'pull', side: 'left' }, RUNGS, DEFAULT_LIMITS)).toEqual(
      [{ days: 20, usualDays: 28 }],
    );
  });
});

describe('forecast', () => {
  const two = [on(1, 0), on(2, 28), on(3, 56)];
  it('goes to the last rung, says what it rests on and shows its numbers', () => {
    const found = said(two, 56);
    expect(found).toMatchObject({ goalId: 'pull-5', passed: 2, usualOnly: false });
    expect(found?.sentence).toMatch(
      /^Last rung, Pull 5: probably between \w+ and \w+ 2026, most likely \w+; 2 rungs passed here, the rest from the library's usual times\.$/,
    );
    // Three rungs of 28 days at the usual pace: the middle is near 84 days.
    const left = daysBetween(day(56), found?.middle ?? '');
    expect(left).toBeGreaterThan(75);
    expect(left).toBeLessThan(95);
    expect(found?.working.inputs).toContainEqual({
      name: 'each took',
      value: '1, 1',
      unit: 'x its usual time',
    });
    expect(found?.working.thresholds.map((one) => one.id)).toContain('forecast.spreadBetween');
  });
  it('gives the usual range alone under two passed rungs, whatever the one took', () => {
    const slow = said([on(1, 0), on(2, 80)], 80);
    expect(slow).toMatchObject({ passed: 1, usualOnly: true });
    expect(slow?.sentence).toMatch(/by the library's usual times alone; only 1 rung passed here\.$/);
    const usual = said([on(1, 0), on(2, 28)], 28);
    expect(daysBetween(day(80), slow?.late ?? '')).toBe(daysBetween(day(28), usual?.late ?? ''));
    expect(said([on(1, 0)], 3)?.sentence).toMatch(/no rung passed here yet\.$/);
  });
  it('is later for a client who was slower, and the same for the same client', () => {
    const slow = said([on(1, 0), on(2, 56), on(3, 112)], 112);
    expect(daysBetween(day(112), slow?.middle ?? '')).toBeGreaterThan(
      1.4 * daysBetween(day(56), said(two, 56)?.middle ?? ''),
    );
    expect(said(two, 56)).toEqual(said([...two].reverse(), 56));
  });
  it('reads nothing that is dated later', () => {
    expect(said([...two, on(4, 70)], 60)).toEqual(said(two, 60));
  });
  it('starts after a pause with an end, and is silent in one without', () => {
    const pause = (to: string | null) => ({ absences: [{ kind: 'pause' as const, from: day(56), to }] });
    const dates = [said(two, 60, pause(day(100))), said(two, 56)].map((one) => one?.early ?? '');
    expect(daysBetween(dates[1] ?? '', dates[0] ?? '')).toBe(44);
    expect(said(two, 60, pause(null))).toBeUndefined();
    expect(said(two, 60, pause(day(59)))).toBeDefined();
  });
  it('says nothing of a rung without a usual time', () => {
    const view = viewOf(two, 60, { rungs: RUNGS.map((rung) => ({ ...rung, usualWeeks: 0 })) });
    const [standing] = standingsOf(view);
    expect(standing && forecast(view, standing, RUNGS, DEFAULT_LIMITS)).toBeUndefined();
  });
});

describe('time to the goal', () => {
  const sure: Partial<Limits> = {
    'forecast.spreadWithin': 0.5,
    'forecast.spreadBetween': 0.001,
    'forecast.spreadWorth': 1e6,
    'forecast.draws': 40_000,
  };
  const left = (days: number, over = sure) =>
    timeToGoal({ seed: 's', passed: [], now: { days, usualDays: 30 }, ahead: [] }, limitsWith(over));
  it('of one rung with a known pace is the log-normal, cut where it has got to', () => {
    // Of ln T ~ N(ln 30, 0.5): 10, 50, 90 %; with 30 days behind, 55, 75 and 95 % less 30.
    const expected = { 0: [15.81, 30, 56.94], 30: [1.945, 12.03, 38.28] };
    for (const days of [0, 30] as const) {
      const { early, middle, late } = left(days);
      [early, middle, late].forEach((value, index) => {
        expect(Math.abs(value - (expected[days][index] ?? 0))).toBeLessThan(0.6);
      });
    }
  });
  it('of one rung of which nothing is known is its usual time, a factor of 2 each way', () => {
    const { early, middle, late } = left(0, { 'forecast.draws': 40_000 });
    expect(Math.abs(early / 15 - 1)).toBeLessThan(0.06);
    expect(Math.abs(middle / 30 - 1)).toBeLessThan(0.03);
    expect(Math.abs(late / 60 - 1)).toBeLessThan(0.06);
  });
  it('is not changed by rungs passed on the day they were begun', () => {
    const having = (...days: number[]) =>
      timeToGoal(
        {
          seed: 's',
          passed: days.map((each) => ({ days: each, usualDays: 30 })),
          now: { days: 5, usualDays: 30 },
          ahead: [30],
        },
        DEFAULT_LIMITS,
      );
    expect(having(0, 40, 0, 24)).toEqual(having(40, 24));
    expect(Number.isFinite(having(0).middle)).toBe(true);
  });
  it('grows with a rung that takes long, because the pace is slower than thought', () => {
    const ahead = [30, 30];
    const at = (days: number) =>
      timeToGoal({ seed: 's', passed: [], now: { days, usualDays: 30 }, ahead }, DEFAULT_LIMITS);
    expect(at(90).middle).toBeGreaterThan(1.3 * at(15).middle);
    expect(Number.isFinite(at(30_000).late)).toBe(true);
  });
  it('is what 4 million draws give when those in which the rung was passed by day 45 are thrown away', () => {
    // NumPy: no weights and no conditional draws.
    const PASSED = [40, 24].map((days) => ({ days, usualDays: 30 }));
    const expected = [28.17, 49.78, 100.9];
    const { early, middle, late } = timeToGoal(
      { seed: 's', passed: PASSED, now: { days: 45, usualDays: 30 }, ahead: [30] },
      limitsWith({ 'forecast.draws': 80_000 }),
    );
    [early, middle, late].forEach((value, index) => {
      expect(Math.abs(value / (expected[index] ?? 0) - 1)).toBeLessThan(0.04);
    });
  });
});

describe('the words of a forecast', () => {
  const words = (early: string, middle: string, late: string) =>
    forecastSentence({ goal: 'G', early, middle, late, passed: 3, usualOnly: false });
  it('name the year of every month, or once where it is one', () => {
    expect(words('2027-03-02', '2027-05-09', '2027-08-30')).toContain(
      'Last rung, G: probably between March and August 2027, most likely May;',
    );
    expect(words('2026-11-02', '2027-01-09', '2027-04-30')).toContain(
      'between November 2026 and April 2027, most likely January 2027;',
    );
    expect(words('2026-11-02', '2026-12-09', '2027-04-30')).toContain('most likely December 2026;');
    expect(words('2027-03-02', '2027-03-09', '2027-03-30')).toContain(
      'Last rung, G: probably in March 2027; 3 rungs',
    );
  });
});
