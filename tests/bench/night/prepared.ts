import { addDays } from '#lib/domain/local-date.ts';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { placeQueuesAt } from '#lib/jobs/queue.ts';
import { type Filled, fill, ZONE } from './fill.ts';
import { keepReasons, newestNight, oweAgain, timeNight } from './one-night.ts';
import { openPlace, type Place } from './place.ts';
import { startWorkers } from './workers.ts';

const CLIENTS = 10_000;
const YEAR = 365;

export type Prepared = { place: Place; queue: QueuePlace; date: string; group: Filled };

let open: { place: Place; date: string } | undefined;
const groups = new Map<string, Filled>();

/**
 * Clients by the scale with that many years behind them, in teams of a thousand at most and ten at least, with the night
 * before the measured one run. Benches of one run share them.
 */
export async function prepare(scale: number, years: 1 | 2): Promise<Prepared> {
  open ??= await begin();
  const { place, date } = open;
  const queue = place.redis ?? place.postgres;
  await placeQueuesAt(queue);
  const key = `${scale} ${years}`;
  const group = groups.get(key) ?? (await make(open, scale, years));
  groups.set(key, group);
  return { place, queue, date, group };
}

async function begin(): Promise<{ place: Place; date: string }> {
  const place = await openPlace();
  return { place, date: await newestNight(place.db, ZONE) };
}

async function make({ place, date }: { place: Place; date: string }, scale: number, years: number) {
  const clients = Math.max(100, Math.round(CLIENTS * scale));
  const group = await fill(place.db, { teams: 10, clients, days: YEAR * years, until: date });
  const eve = addDays(date, -1);
  await oweAgain(place.db, date, []);
  await oweAgain(place.db, eve, group.teamIds);
  const workers = await startWorkers(place, place.redis ?? place.postgres, 2);
  await timeNight(place.db, eve, group);
  await workers.stop();
  await keepReasons(place.db);
  return group;
}
