import { runChecks } from '#lib/checks/run.ts';
import { addDays } from './detect/calendar.ts';
import { FIRST_DAY, makeClient } from './detect/generator.ts';
import { WORLDS } from './detect/worlds.ts';
import { type Bench, timePerCall } from './harness.ts';

const DAYS = 84;

/** The same floating-point work everywhere: what a bare loop of the machine needs, to compare machines. */
function reference(): number {
  let sum = 0;
  for (let i = 1; i < 100_000; i += 1) sum += Math.sqrt(i) / (1 + (i % 7));
  return sum;
}

export const checksBench: Bench = {
  name: 'checks',
  what: 'the pure checks on 84 days of one client',
  run: () => {
    const [world] = WORLDS;
    if (!world) throw new Error('no world');
    const made = makeClient({ ...world, daysPerWeek: [5, 5] }, 'stacked', 7, DAYS);
    const asOf = { date: addDays(FIRST_DAY, DAYS - 1), instant: `${addDays(FIRST_DAY, DAYS)}T02:00:00.000Z` };
    for (let i = 0; i < 300; i += 1) runChecks(made.history, asOf); // let the compiler settle
    const value = timePerCall(15, 50, () => runChecks(made.history, asOf));
    const base = timePerCall(15, 50, reference);
    const sets = made.history.checkIns.reduce((sum, one) => sum + one.sets.length, 0);
    return Promise.resolve([
      {
        name: 'checks',
        value,
        unit: 'ms a client, median',
        reference: base,
        ratio: value / base,
        better: 'lower',
        must: '0.5 ms',
        aim: '0.1 ms',
        sizes: `${DAYS} days, ${made.history.checkIns.length} check-ins, ${sets} sets, ${made.history.placements.length} placements`,
      },
    ]);
  },
};
