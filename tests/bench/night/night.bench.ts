import { availableParallelism } from 'node:os';
import { type Bench, type BenchRow, medianOf } from '../harness.ts';
import type { Filled } from './fill.ts';
import { makeWindow, oweAgain, timeCopy, timeNight } from './one-night.ts';
import { type Prepared, prepare } from './prepared.ts';
import { startWorkers } from './workers.ts';

const ROUNDS = 5;
/** Rounds of more than a minute: three of them. */
const LONG_ROUNDS = 3;
const LONG_SECONDS = 60;

type Measured = { value: number; reference: number };

export const nightBench: Bench = {
  name: 'night',
  shares: 'night',
  what: 'one night of 10,000 clients over COPY of the same 84 days of set rows; with the memory of a worker',
  run: async (scale) => {
    const prepared = await prepare(scale, 1);
    const { place, queue, date, group } = prepared;
    const rows = await makeWindow(place.db, date, group.teamIds);
    const processes = Math.min(4, availableParallelism());
    const workers = await startWorkers(place, queue, processes);
    const rounds = await eachRound(async (turn) => {
      await oweAgain(place.db, date, group.teamIds);
      const measure = { copy: () => timeCopy(place.db), night: () => timeNight(place.db, date, group) };
      const first = turn % 2 === 0 ? await measure.copy() : undefined;
      const value = await measure.night();
      return { value, reference: first ?? (await measure.copy()) };
    });
    const peak = workers.peakMb();
    await workers.stop();
    const sizes = `${sizesOf(group)}, ${processes} workers on ${queue.kind}, window of ${rows} set rows, ${rounds.length} rounds`;
    const memory: BenchRow[] =
      peak === null
        ? []
        : [
            {
              ...LOWER,
              name: 'memory',
              value: peak,
              unit: 'MB, peak of a worker',
              must: '512 MB',
              aim: '256 MB',
              sizes,
            },
          ];
    return [{ ...ratioOf(rounds), name: 'night', unit: 's', must: '8x', aim: '3x', sizes }, ...memory];
  },
};

export const nightHistoryBench: Bench = {
  name: 'night-history',
  shares: 'night',
  what: 'one night with two years behind every client over one with a year',
  run: async (scale) => {
    const { place, queue, date, group: one } = await prepare(scale, 1);
    const { group: two } = await prepare(scale, 2);
    const workers = await startWorkers(place, queue, 1);
    const timed = async (group: Filled) => {
      await oweAgain(place.db, date, group.teamIds);
      return timeNight(place.db, date, group);
    };
    const rounds = await inTurns(
      () => timed(two),
      () => timed(one),
    );
    await workers.stop();
    const sizes = `${sizesOf(two)} against ${sizesOf(one)}, 1 worker on ${queue.kind}, ${rounds.length} rounds`;
    return [{ ...ratioOf(rounds), name: 'night-history', unit: 's', must: '1.15x', aim: '1.05x', sizes }];
  },
};

export const nightClientsBench: Bench = {
  name: 'night-clients',
  shares: 'night',
  what: 'time per client of a night of all over a night of a tenth of them',
  run: async (scale) => {
    const { place, queue, date, group } = await prepare(scale, 1);
    const few = { teamIds: group.teamIds.slice(0, 1), clients: group.clients / group.teamIds.length };
    const workers = await startWorkers(place, queue, 1);
    const perClient = async (asked: Pick<Filled, 'teamIds' | 'clients'>) => {
      await oweAgain(place.db, date, asked.teamIds);
      return ((await timeNight(place.db, date, asked)) / asked.clients) * 1000;
    };
    const rounds = await inTurns(
      () => perClient(group),
      () => perClient(few),
    );
    await workers.stop();
    const sizes = `${sizesOf(group)} against ${few.clients} of them, 1 worker on ${queue.kind}, ${rounds.length} rounds`;
    return [
      { ...ratioOf(rounds), name: 'night-clients', unit: 'ms a client', must: '1.1x', aim: '1.0x', sizes },
    ];
  },
};

export const nightWorkersBench: Bench = {
  name: 'night-workers',
  shares: 'night',
  what: 'one night by two worker processes on Redis over one; needs redis-server or REDIS_URL',
  run: async (scale) => {
    const { place, date, group } = await prepare(scale, 1);
    const { redis } = place;
    if (!redis) throw new Error('night-workers needs a Redis: install redis-server, or set REDIS_URL');
    const timed = async (processes: number) => {
      const workers = await startWorkers(place, redis, processes);
      await warm({ place, queue: redis, date, group });
      await oweAgain(place.db, date, group.teamIds);
      const seconds = await timeNight(place.db, date, group);
      await workers.stop();
      return seconds;
    };
    const rounds = await inTurns(
      () => timed(2),
      () => timed(1),
    );
    const sizes = `${sizesOf(group)}, ${rounds.length} rounds`;
    return [{ ...ratioOf(rounds), name: 'night-workers', unit: 's', must: '0.65x', aim: '0.55x', sizes }];
  },
};

/** A fresh process compiles while it works: a night of everybody first, which is not counted. */
async function warm({ place, date, group }: Prepared): Promise<void> {
  await oweAgain(place.db, date, group.teamIds);
  await timeNight(place.db, date, group);
}

const LOWER = { better: 'lower' as const, reference: null, ratio: null };

function ratioOf(rounds: readonly Measured[]) {
  return {
    value: medianOf(rounds.map(({ value }) => value)),
    reference: medianOf(rounds.map(({ reference }) => reference)),
    ratio: medianOf(rounds.map(({ value, reference }) => value / reference)),
    better: 'lower' as const,
  };
}

/** Both one after the other, the order changing with each round: a machine that grows slower must not count against one. */
function inTurns(measured: () => Promise<number>, reference: () => Promise<number>): Promise<Measured[]> {
  return eachRound(async (turn) => {
    if (turn % 2 === 0) return { value: await measured(), reference: await reference() };
    const first = await reference();
    return { value: await measured(), reference: first };
  });
}

/** One round before that does not count. */
async function eachRound(round: (turn: number) => Promise<Measured>): Promise<Measured[]> {
  await round(0);
  const done: Measured[] = [];
  const isOver = () => done.length >= (done.some(({ value }) => value > LONG_SECONDS) ? LONG_ROUNDS : ROUNDS);
  while (!isOver()) done.push(await round(done.length));
  return done;
}

function sizesOf({ clients, days, checkIns, sets, teamIds }: Filled): string {
  return `${clients} clients in ${teamIds.length} teams with ${days} days, ${checkIns} check-ins, ${sets} sets`;
}
