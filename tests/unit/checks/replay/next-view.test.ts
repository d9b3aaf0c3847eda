import { expect, it } from 'vitest';
import { CHECKS } from '#lib/checks/registry.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { buildView, nextView } from '#lib/checks/view.ts';
import { addDays } from '#tests/bench/detect/calendar.ts';
import { FIRST_DAY, makeClient } from '#tests/bench/detect/generator.ts';
import { PLANTED } from '#tests/bench/detect/planted.ts';
import { WORLDS } from '#tests/bench/detect/worlds.ts';

const DAYS = 150;

it('night after night, a view that knows the one before says what a view of its own says, late check-ins too', () => {
  let known = 0;
  PLANTED.filter((_, at) => at % 3 === 0).forEach(({ name }, index) => {
    const world = WORLDS[index % WORLDS.length];
    if (!world) throw new Error('no world');
    const made = makeClient(world, name, index + 1, DAYS).history;
    // Every ninth check-in is sent four days late: the nights between do not know it, and it comes in amid others.
    const checkIns = made.checkIns.map((one, at) =>
      at % 9 === 4 ? { ...one, sentAt: `${addDays(one.date, 4)}T20:00:00.000Z` } : one,
    );
    let before: ClientView | undefined;
    for (let day = 100; day < DAYS; day += index % 5 === 0 ? 3 : 1) {
      const asOf = { date: addDays(FIRST_DAY, day), instant: `${addDays(FIRST_DAY, day + 1)}T03:00:00.000Z` };
      const history = { ...made, checkIns: checkIns.filter(({ sentAt }) => sentAt <= asOf.instant) };
      const fresh = buildView(history, asOf, DEFAULT_LIMITS);
      const next = nextView(buildView(history, asOf, DEFAULT_LIMITS), before);
      if (next.earlier) known += 1;
      for (const check of CHECKS)
        expect(check.evaluate(next, DEFAULT_LIMITS)).toEqual(check.evaluate(fresh, DEFAULT_LIMITS));
      before = next;
    }
  });
  expect(known).toBeGreaterThan(120);
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
  expect(nextView(buildView(history, on(51)), evening).earlier).toBe(evening);
  const corrected = {
    ...history,
    checkIns: history.checkIns.map((one, at) => (at === 5 ? { ...one } : one)),
  };
  expect(nextView(buildView(corrected, on(51)), evening).earlier).toBeUndefined();
  expect(nextView(buildView(history, on(49)), evening).earlier).toBeUndefined();
});
