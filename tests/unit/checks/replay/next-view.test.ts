import { expect, it } from 'vitest';
import { CHECKS } from '#lib/checks/registry.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { buildView } from '#lib/checks/view.ts';
import { nextView } from '#lib/checks/view-next.ts';
import { addDays } from '#tests/bench/detect/calendar.ts';
import { FIRST_DAY, makeClient } from '#tests/bench/detect/generator.ts';
import { PLANTED } from '#tests/bench/detect/planted.ts';
import { WORLDS } from '#tests/bench/detect/worlds.ts';

const DAYS = 150;

it('night after night, a view that knows the one before says what a view of its own says, late check-ins too', () => {
  let known = 0;
  let quiet = 0;
  PLANTED.filter((_, at) => at % 3 === 0).forEach(({ name }, index) => {
    const world = WORLDS[index % WORLDS.length];
    if (!world) throw new Error('no world');
    const made = makeClient(world, name, index + 1, DAYS).history;
    // Every ninth check-in is sent four days late: the nights between do not know it, and it comes in amid others.
    const checkIns = made.checkIns.map((one, at) =>
      at % 9 === 4 ? { ...one, sentAt: `${addDays(one.date, 4)}T20:00:00.000Z` } : one,
    );
    // Away for good from some day on: quiet days are days off.
    const absences =
      index % 4 === 1
        ? [...made.absences, { from: addDays(FIRST_DAY, DAYS - 9), to: null, kind: 'holiday' as const }]
        : made.absences;
    let before: ClientView | undefined;
    let sent = checkIns.slice(0, 0);
    for (let day = 100; day < DAYS; day += index % 5 === 0 ? 3 : 1) {
      const asOf = { date: addDays(FIRST_DAY, day), instant: `${addDays(FIRST_DAY, day + 1)}T03:00:00.000Z` };
      const sentNow = checkIns.filter(({ sentAt }) => sentAt <= asOf.instant);
      if (sentNow.length !== sent.length) sent = sentNow;
      const history = { ...made, absences, checkIns: sent };
      const fresh = buildView(history, asOf, DEFAULT_LIMITS);
      const next = nextView(history, asOf, DEFAULT_LIMITS, before);
      if (next.earlier) known += 1;
      if (next.nothingNew) quiet += 1;
      expect(next.days).toEqual(fresh.days);
      for (const check of CHECKS)
        expect(check.evaluate(next, DEFAULT_LIMITS)).toEqual(check.evaluate(fresh, DEFAULT_LIMITS));
      before = next;
    }
  });
  expect(known).toBeGreaterThan(120);
  expect(quiet).toBeGreaterThan(60);
});

it('does not take a view for the one before when a day has other check-ins than it had', () => {
  const [world] = WORLDS;
  if (!world) throw new Error('no world');
  const { history } = makeClient(world, undefined, 3, 60);
  const on = (day: number) => ({
    date: addDays(FIRST_DAY, day),
    instant: `${addDays(FIRST_DAY, day + 1)}T03:00:00.000Z`,
  });
  const evening = buildView(history, on(50));
  expect(nextView(history, on(51), DEFAULT_LIMITS, evening).earlier).toBe(evening);
  const corrected = {
    ...history,
    checkIns: history.checkIns.map((one, at) => (at === 5 ? { ...one } : one)),
  };
  expect(nextView(corrected, on(51), DEFAULT_LIMITS, evening).earlier).toBeUndefined();
  expect(nextView(history, on(49), DEFAULT_LIMITS, evening).earlier).toBeUndefined();
});

it('adds quiet days as they are told: away, in an easy week, with what was dated ahead', () => {
  const [world] = WORLDS;
  if (!world) throw new Error('no world');
  const made = makeClient(world, undefined, 4, 60).history;
  const on = (day: number) => ({
    date: addDays(FIRST_DAY, day),
    instant: `${addDays(FIRST_DAY, day + 1)}T03:00:00.000Z`,
  });
  const [plan] = made.plans;
  if (!plan) throw new Error('no plan');
  const checkIns = made.checkIns.filter(({ date }) => date <= on(40).date);
  const history = {
    ...made,
    checkIns,
    plans: [{ ...plan, easyWeeks: [on(42).date] }],
    absences: [{ from: on(44).date, to: on(45).date, kind: 'illness' as const }],
  };
  let before = buildView(history, on(40));
  for (let day = 41; day < 50; day += 1) {
    const next = nextView(history, on(day), DEFAULT_LIMITS, before);
    expect(next.nothingNew).toBe(true);
    expect(next.days).toEqual(buildView(history, on(day)).days);
    before = next;
  }
  expect(before.days.filter(({ easy }) => easy).length).toBeGreaterThan(6);
  expect(before.days.at(-5)).toMatchObject({ state: 'off', sessionLoad: 0 });

  const ahead = { ...history, checkIns: made.checkIns.filter(({ date }) => date <= on(45).date) };
  const evening = buildView(ahead, on(40));
  const next = nextView(ahead, on(45), DEFAULT_LIMITS, evening);
  expect(next.nothingNew).toBe(false);
  expect(next.days).toEqual(buildView(ahead, on(45)).days);
});
