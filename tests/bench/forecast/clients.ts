import type { ClientHistory } from '#lib/domain/history.ts';
import { aHistory, aRung } from '#tests/fixtures/history-builders.ts';
import { addDays } from '../detect/calendar.ts';
import { draws } from '../detect/random.ts';
import type { ForecastWorld } from './worlds.ts';

export type ForecastClient = {
  history: ClientHistory;
  /** The evening on which the forecast is asked; the goal is not yet reached. */
  date: string;
  /** The day on which the last rung is passed. */
  reached: string;
  /** Usual days of what is left, the present rung in full. */
  usualDaysLeft: number;
};

const FIRST = '2024-01-01';
const DAYS_A_WEEK = 7;
const USUAL_WEEKS = [2, 3, 4, 4, 5, 5, 6, 6, 8, 8, 10, 12] as const;
const LADDER = 'ladder';

/**
 * A client on a ladder of 4 to 11 rungs, seen on a random evening within one and a half times the usual weeks of all
 * of it. Undefined when the goal was reached before that evening: the evening must not be chosen by the outcome.
 */
export function makeForecastClient(world: ForecastWorld, seed: number): ForecastClient | undefined {
  const d = draws(seed);
  const rungs = Array.from({ length: d.int(4, 11) }, (_, index) =>
    aRung({ id: `rung-${index}`, ladderId: LADDER, position: index, usualWeeks: d.pick(USUAL_WEEKS) }),
  );
  const pace = world.middle * Math.exp(d.normal(0, world.between));
  const done = d.chance(world.partWay) ? d.uniform(0, 0.8) : 0;
  const placements: ClientHistory['placements'] = [];
  let day = 0;
  rungs.forEach((rung, index) => {
    placements.push({
      ladderId: LADDER,
      side: 'both',
      rungId: rung.id,
      from: addDays(FIRST, Math.round(day)),
    });
    const slower = (1 + world.slowing) ** index * (d.chance(world.stuck) ? world.stuckFactor : 1);
    const days = rung.usualWeeks * DAYS_A_WEEK * pace * slower * Math.exp(d.normal(0, world.within));
    day += Math.max(1, days * (index === 0 ? 1 - done : 1)) + d.uniform(0, world.reviewDays);
  });
  const usual = rungs.reduce((sum, rung) => sum + rung.usualWeeks * DAYS_A_WEEK, 0);
  const asked = Math.round(d.uniform(1, 1.5 * usual));
  if (asked >= Math.round(day)) return undefined;
  const date = addDays(FIRST, asked);
  const standing = placements.filter((one) => one.from <= date).length - 1;
  return {
    history: aHistory({
      client: { id: `client-${seed}`, joinedAt: `${FIRST}T07:00:00.000Z` },
      rungs,
      placements,
      plans: [],
    }),
    date,
    reached: addDays(FIRST, Math.round(day)),
    usualDaysLeft: rungs.slice(standing).reduce((sum, rung) => sum + rung.usualWeeks * DAYS_A_WEEK, 0),
  };
}
