import { closeDb } from '#lib/db/client.ts';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, placeQueuesAt } from '#lib/jobs/queue.ts';
import { type Bench, medianOf } from '../harness.ts';
import { type Filled, fill, ZONE } from '../night/fill.ts';
import { newestNight, oweAgain, timeNight } from '../night/one-night.ts';
import { startWorkers } from '../night/workers.ts';
import { missingBuild, round } from './board.bench.ts';
import { fillTeam } from './fill-team.ts';
import { type Product, startProduct, TEAM } from './product.ts';

const CLIENTS = 1_000;
/** Of other teams, whose night runs while the board is opened. */
const IN_THE_NIGHT = 2_000;
const ROUNDS = 5;

/** p95 of the board while a night runs on the same machine against p95 of the same board in peace, round by round in turn. */
export const boardNightBench: Bench = {
  name: 'board-night',
  what: 'p95 of the board while a night runs over p95 in peace, as `npm start` runs both; needs a build',
  missing: missingBuild,
  run: async (scale) => {
    const product = await startProduct();
    try {
      Object.assign(process.env, product.environment); // for the modules of the product that are called from here
      const queue: QueuePlace = { kind: 'postgres', url: product.environment.APP_DATABASE_URL ?? '' };
      const { date, group, board } = await prepare(product, scale);
      const workers = await startWorkers(product, queue, 1);
      await placeQueuesAt(queue);
      const night = async () => {
        await oweAgain(product.db, date, group.teamIds);
        await timeNight(product.db, date, group);
      };
      const during = (work: () => Promise<number>) => whileRunning(night, work);
      const read = () => round(product, '/');
      for (const warm of [read, () => during(read)]) await warm();
      const times: { value: number; reference: number }[] = [];
      for (let turn = 0; turn < ROUNDS; turn += 1) {
        const reference = turn % 2 === 0 ? await read() : undefined;
        const value = await during(read);
        times.push({ value, reference: reference ?? (await read()) });
      }
      await workers.stop();
      return [
        {
          name: 'board-night',
          value: medianOf(times.map((time) => time.value)),
          unit: 'ms, p95',
          reference: medianOf(times.map((time) => time.reference)),
          ratio: medianOf(times.map((time) => time.value / time.reference)),
          better: 'lower',
          must: '2x',
          aim: '1.2x',
          sizes: `board of ${board.clients} clients, night of ${group.clients} others with ${group.days} days, 1 worker on PostgreSQL, ${ROUNDS} rounds`,
        },
      ];
    } finally {
      await closeQueues();
      await closeDb();
      await product.stop();
    }
  },
};

async function prepare({ db }: Product, scale: number) {
  const date = await newestNight(db, ZONE);
  const group: Filled = await fill(db, {
    teams: 4,
    clients: Math.max(40, Math.round(IN_THE_NIGHT * scale)),
    days: 365,
    until: date,
  });
  const today = new Intl.DateTimeFormat('en-CA', { timeZone: ZONE }).format(new Date());
  const board = await fillTeam(db, { name: TEAM, clients: Math.max(10, Math.round(CLIENTS * scale)), today });
  return { date, group, board };
}

/** The work, while nights follow one another. */
async function whileRunning(night: () => Promise<void>, work: () => Promise<number>): Promise<number> {
  let over = false;
  const nights = (async () => {
    while (!over) await night();
  })();
  const answer = await work();
  over = true;
  await nights;
  return answer;
}
