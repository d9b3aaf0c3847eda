import { loadsOf } from '#lib/checks/load-series.ts';
import { runChecks } from '#lib/checks/run.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from './detect/calendar.ts';
import { FIRST_DAY, makeClient } from './detect/generator.ts';
import { WORLDS } from './detect/worlds.ts';
import { type Bench, type BenchRow, medianOf, timePerCall } from './harness.ts';
import { trainedInTurns } from './twelve-ladders.ts';

const DAYS = 84;
const AS_OF = { date: addDays(FIRST_DAY, DAYS - 1), instant: `${addDays(FIRST_DAY, DAYS)}T02:00:00.000Z` };

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
    const { history } = makeClient({ ...world, daysPerWeek: [5, 5] }, 'side', 1, DAYS);
    return Promise.resolve([
      measured('checks', trainedInTurns(history)),
      measured('checks-four-ladders', history),
    ]);
  },
};

function measured(name: string, history: ClientHistory): BenchRow {
  // A night goes through thousands of clients: what counts is the compiler settled.
  for (let i = 0; i < 3000; i += 1) runChecks(history, AS_OF);
  const times: number[] = [];
  const bases: number[] = [];
  for (let round = 0; round < 40; round += 1) {
    times.push(timePerCall(1, 50, () => runChecks(history, AS_OF)));
    bases.push(timePerCall(1, 20, reference));
  }
  const [value, base] = [medianOf(times), medianOf(bases)];
  const unit = 'ms a client, median';
  const ratio = value / base;
  const [must, aim] = ['0.5 ms', '0.1 ms'];
  return {
    name,
    value,
    unit,
    reference: base,
    ratio,
    better: 'lower',
    must,
    aim,
    sizes: sizesOf(history),
  };
}

function sizesOf(history: ClientHistory): string {
  const sets = history.checkIns.reduce((sum, one) => sum + one.sets.length, 0);
  const ladders = new Set(history.placements.map(({ ladderId }) => ladderId)).size;
  const loaded = [...loadsOf(buildView(history, AS_OF)).tissues.keys()];
  const tissues = new Set(loaded.map((key) => key.split(':')[0])).size;
  return `${DAYS} days, ${history.checkIns.length} check-ins, ${sets} sets, ${ladders} ladders, ${tissues} tissues, both sides`;
}
