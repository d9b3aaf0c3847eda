import { describe, expect, it } from 'vitest';
import { CHECKS } from '#lib/checks/registry.ts';
import { runChecks } from '#lib/checks/run.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { buildLongView, buildView, firstSeen, LONG_VIEW_DAYS, mostDaysSeen } from '#lib/checks/view.ts';
import { nextView } from '#lib/checks/view-next.ts';
import { dayNumber } from '#lib/domain/day-number.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { addDays } from '#tests/bench/detect/calendar.ts';
import { FIRST_DAY, makeClient } from '#tests/bench/detect/generator.ts';
import { PLANTED } from '#tests/bench/detect/planted.ts';
import { WORLDS } from '#tests/bench/detect/worlds.ts';

const DAYS = 480;
const [BACK, STEP] = [DEFAULT_LIMITS['day.lookBackDays'], DEFAULT_LIMITS['day.lookBackStep']];
const on = (day: number) => ({
  date: addDays(FIRST_DAY, day),
  instant: `${addDays(FIRST_DAY, day + 1)}T03:00:00.000Z`,
});
const lives = PLANTED.filter((_, at) => at % 4 === 0).map(({ name }, index) => {
  const world = WORLDS[index % WORLDS.length];
  if (!world) throw new Error('no world');
  return makeClient(world, name, index + 1, DAYS).history;
});

/** Check-ins from a date on, the plans that can have held on it or later, and the first one: as the night's queries do. */
function asNightsRead(history: ClientHistory, from: string): ClientHistory {
  const held = Math.max(
    0,
    ...history.plans.filter((plan) => plan.from <= from).map(({ version }) => version),
  );
  const first = Math.min(...history.plans.map(({ version }) => version));
  return {
    ...history,
    checkIns: history.checkIns.filter(({ date }) => date >= from),
    plans: history.plans.filter(
      (plan) => plan.from >= from || plan.version >= held || plan.version === first,
    ),
  };
}

describe('what the checks look back on', () => {
  it('is half a year at least, and begins anew every four weeks since the client joined', () => {
    const starts = Array.from({ length: 120 }, (_, at) =>
      firstSeen('2026-01-05', dayNumber('2027-03-01') + at, DEFAULT_LIMITS),
    );
    starts.forEach((start, at) => {
      const length = dayNumber('2027-03-01') + at - start + 1;
      expect(length).toBeGreaterThanOrEqual(BACK);
      expect(length).toBeLessThanOrEqual(mostDaysSeen(DEFAULT_LIMITS));
      expect((start - dayNumber('2026-01-05')) % STEP).toBe(0);
    });
    expect(new Set(starts).size).toBe(5);
    expect(firstSeen(undefined, dayNumber('2027-03-01'), DEFAULT_LIMITS)).toBeGreaterThan(
      dayNumber('2027-03-01') - mostDaysSeen(DEFAULT_LIMITS),
    );
  });

  it('is all that a night has to read: the rest of a history changes nothing that is said', () => {
    let trimmed = 0;
    for (const history of lives) {
      for (const day of [300, 333, 401, 479]) {
        const { date } = on(day);
        const from = addDays(date, 1 - mostDaysSeen(DEFAULT_LIMITS));
        const read = asNightsRead(history, from);
        expect(read.checkIns.length).toBeLessThan(history.checkIns.length);
        trimmed += history.plans.length - read.plans.length;
        expect(runChecks(read, on(day))).toEqual(runChecks(history, on(day)));
        expect(buildView(read, on(day)).days).toEqual(buildView(history, on(day)).days);
      }
    }
    expect(trimmed).toBeGreaterThan(20);
  });

  it('is followed from night to night over the start of the next four weeks', () => {
    const fresh = lives.map((history) => {
      let before: ClientView | undefined;
      let anew = 0;
      for (let day = 230; day < 300; day += 1) {
        const checkIns = history.checkIns.filter((one) => one.date <= on(day).date);
        const same = before?.history.checkIns.length === checkIns.length;
        const sent = { ...history, checkIns: same && before ? before.history.checkIns : checkIns };
        const next = nextView(sent, on(day), DEFAULT_LIMITS, before);
        const whole = buildView(sent, on(day));
        expect(next.days).toEqual(whole.days);
        for (const check of CHECKS)
          expect(check.evaluate(next, DEFAULT_LIMITS)).toEqual(check.evaluate(whole, DEFAULT_LIMITS));
        if (before && !next.earlier) anew += 1;
        before = next;
      }
      return anew;
    });
    // Twice or thrice in seventy days a view begins later than the one before; a quiet night in between changes nothing.
    for (const times of fresh) expect(times).toBeGreaterThanOrEqual(2);
    for (const times of fresh) expect(times).toBeLessThanOrEqual(3);
  });
});

it('pages look back on more than the checks', () => {
  const [history] = lives;
  if (!history) throw new Error('no life');
  const { date } = on(479);
  const long = buildLongView(history, on(479), DEFAULT_LIMITS);
  const first = long.days[0]?.date ?? '';
  expect(dayNumber(date) - dayNumber(first) + 1).toBe(LONG_VIEW_DAYS);
  const near = buildView(history, on(479));
  const { joinedAt, zone } = history.client;
  expect(near.joinedOn).toBe(joinedAt === null ? undefined : localDateOf(new Date(joinedAt), zone));
  expect(near.days.length).toBeLessThan(mostDaysSeen(DEFAULT_LIMITS) + 1);
});
