import { kindsReading } from '#lib/checks/replay/kinds-reading.ts';
import { replayClient } from '#lib/checks/replay/replay-client.ts';
import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays } from './detect/calendar.ts';
import { FIRST_DAY, makeClient } from './detect/generator.ts';
import { PLANTED } from './detect/planted.ts';
import { WORLDS } from './detect/worlds.ts';
import { type Bench, medianOf } from './harness.ts';

const CLIENTS = 200;
const NIGHTS = 90;
const DAYS = 182;
const ROUNDS = 3;

/** One number of each kind of change: what only its own check reads, what is merged with others, what all read. */
const CHANGES: [string, Partial<Limits>][] = [
  ['replay-sides', { 'sideGap.watchPercent': 12 }],
  ['replay-stalled', { 'stalled.minDays': 42 }],
  ['replay-quiet', { 'goneQuiet.watchDays': 9 }],
  ['replay-pain', { 'painRising.watch': 6 }],
  ['replay-load', { 'loadJump.weekRatio': 1.4 }],
  ['replay-weeks', { 'week.usualOf': 7 }],
];

/** Two in three are fine, the others have one of the planted troubles. */
function histories(clients: number): ClientHistory[] {
  return Array.from({ length: clients }, (_, index) => {
    const world = WORLDS[index % WORLDS.length];
    if (!world) throw new Error('no world');
    const planted = index % 3 === 0 ? PLANTED[(index / 3) % PLANTED.length]?.name : undefined;
    return makeClient(world, planted, 700_000 + index, DAYS).history;
  });
}

const nights = Array.from({ length: NIGHTS }, (_, index) => {
  const date = addDays(FIRST_DAY, DAYS - NIGHTS + index);
  return { date, instant: `${addDays(date, 1)}T03:00:00.000Z` };
});

export const replayBench: Bench = {
  name: 'replay',
  what: '90 nights of 200 clients run again under other numbers',
  run: (scale) => {
    const clients = histories(Math.max(1, Math.round(CLIENTS * scale)));
    const sets = clients.reduce(
      (sum, { checkIns }) => sum + checkIns.reduce((of, one) => of + one.sets.length, 0),
      0,
    );
    return Promise.resolve(
      CHANGES.map(([name, change]) => ({
        name,
        value: secondsOf(clients, change),
        unit: 's, median',
        reference: null,
        ratio: null,
        better: 'lower' as const,
        must: '5 s for 200 clients',
        aim: '2 s',
        sizes: `${clients.length} clients, ${NIGHTS} nights, half a year, ${Math.round(sets / clients.length)} sets each, read already; ${ROUNDS} rounds`,
      })),
    );
  },
};

function secondsOf(clients: readonly ClientHistory[], change: Partial<Limits>): number {
  const reading = kindsReading(Object.keys(change).filter(isLimitId));
  const runs = [DEFAULT_LIMITS, limitsWith(change)] as const;
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const start = performance.now();
    for (const history of clients)
      replayClient({ history, acts: [], nights, nightsDone: NIGHTS, ...reading }, runs);
    times.push((performance.now() - start) / 1000);
  }
  return medianOf(times);
}
