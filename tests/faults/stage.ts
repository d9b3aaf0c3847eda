import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { closeQueues, enqueue, placeQueuesAt, queue } from '#lib/jobs/queue.ts';
import { tickJob } from '#lib/jobs/tick.ts';
import { type Draws, draws } from '#tests/bench/detect/random.ts';
import { AT } from './night.ts';
import { pause } from './pause.ts';
import { type Running, startProgram } from './programs.ts';
import { type Database, SECRET, type World } from './world.ts';

export type Sizes = { clients: number; kills: number };
export type Web = Running & { url: string };

/** One fault's own database, queue, clock and programs. */
export type Stage = {
  world: World;
  kind: QueuePlace['kind'];
  database: Database;
  sizes: Sizes;
  draw: Draws;
  sql: <Row extends object>(text: string, values?: unknown[]) => Promise<Row[]>;
  setClock: (instant: string) => void;
  worker: () => Promise<Running>;
  /** The product's routes; `port`: the same as one that was there before. */
  web: (port?: number) => Promise<Web>;
  /** What the schedule does every 15 minutes. False: the queue does not answer. */
  tick: () => Promise<boolean>;
  /** Every lock that a killed worker left runs out now, as it does by itself after half a minute. */
  expireLocks: () => Promise<void>;
  emptyQueue: () => Promise<void>;
  /** All nights that are owed count as run: what check-ins leave behind stands alone. */
  settle: () => Promise<void>;
  /** The queue is out of reach, and back, as empty as it may be then. */
  queueAway: () => Promise<void>;
  queueBack: () => Promise<void>;
  /** True when no small job waits or is at work. */
  isIdle: () => Promise<boolean>;
  /** An hour, for what waits longer after each try, and for locks of the dead. */
  passTime: () => Promise<void>;
  /** True while the next tick is on its way by itself. */
  isScheduled: () => Promise<boolean>;
  /** What no program may ever write. */
  unhandled: () => string[];
  lastLines: () => string[];
  /** Something to be put away once the database is gone. */
  afterwards: (work: () => Promise<void>) => void;
  close: () => Promise<void>;
};

/** The library reclaims what it has found without a lock on two looks in a row: both are over. */
const EXPIRE = `for _, active in ipairs(redis.call('keys', 'bull:*:active')) do
  local queue = string.sub(active, 1, -7)
  redis.call('del', queue .. 'stalled-check')
  for _, id in ipairs(redis.call('lrange', active, 0, -1)) do
    redis.call('del', queue .. id .. ':lock')
    redis.call('sadd', queue .. 'stalled', id)
  end
end`;

export async function openStage(
  world: World,
  options: { kind: QueuePlace['kind']; template: string; sizes: Sizes; seed: number },
): Promise<Stage> {
  const { kind, sizes } = options;
  const database = await world.clone(options.template);
  const clock = join(world.folder, `${database.name}.clock`);
  const programs: Running[] = [];
  const later: (() => Promise<void>)[] = [];
  const redis = kind === 'redis' ? world.redis : undefined;
  if (kind === 'redis' && !redis) throw new Error('there is no Redis');
  const place: QueuePlace = redis ? { kind, url: redis.url } : { kind, url: database.appUrl };
  const environment = (extra: Record<string, string> = {}) => ({
    APP_DATABASE_URL: database.appUrl,
    PLUMBLINE_SECRET: SECRET,
    PLUMBLINE_CLOCK_FILE: clock,
    PLUMBLINE_FILES: join(world.folder, 'files'),
    PLUMBLINE_ORIGIN: 'http://localhost:3000',
    ...(redis && { REDIS_URL: redis.url }),
    ...extra,
  });
  const started = async (file: string, ready: string, extra?: Record<string, string>) => {
    const running = await startProgram(file, environment(extra), ready);
    programs.push(running);
    return running;
  };
  const sql: Stage['sql'] = (text, values) => world.sql(database, text, values);
  const setClock = (instant: string) => writeFileSync(clock, instant);
  const expireLocks = async () => {
    if (redis) await redis.command('EVAL', EXPIRE, '0');
    else {
      await sql(
        `update bullmq.job set locked_until_ms = 0, stalled_marked = true where locked_until_ms is not null`,
      );
      await sql(`delete from bullmq.meta where field = 'stalled-check'`);
    }
  };
  setClock(AT);
  await redis?.command('FLUSHALL');
  await placeQueuesAt(place);
  return {
    world,
    kind,
    database,
    sizes,
    draw: draws(options.seed),
    sql,
    setClock,
    worker: () => started(world.programs.worker, 'worker ready'),
    web: async (port) => {
      const running = await started(
        world.programs.web,
        'web ready',
        port ? { FAULT_PORT: String(port) } : {},
      );
      const line = running.lines.find((each) => each.startsWith('web ready on'));
      return { ...running, url: `http://127.0.0.1:${line?.split(' ').at(-1)}` };
    },
    tick: () =>
      enqueue(tickJob, {}).then(
        () => true,
        () => false,
      ),
    expireLocks,
    emptyQueue: async () => {
      if (redis) await redis.command('FLUSHALL');
      else {
        const tables = await sql<{ name: string }>(
          `select table_name as name from information_schema.tables
           where table_schema = 'bullmq' and table_name not like '%migration%'`,
        );
        await sql(`truncate ${tables.map(({ name }) => `bullmq."${name}"`).join(', ')} cascade`);
      }
    },
    settle: async () => {
      await sql(
        `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts, settings_version)
         select team_id, client_id, local_date, $1, 'earlier', 1, 1 from owed_nights($1, 14)`,
        [AT],
      );
    },
    queueAway: async () => {
      if (redis) redis.kill();
      else await sql('alter schema bullmq rename to bullmq_away');
    },
    queueBack: async () => {
      if (redis) await redis.start();
      else await sql('alter schema bullmq_away rename to bullmq');
    },
    isIdle: () =>
      queue('day')
        .getJobCounts('waiting', 'active')
        .then(
          ({ waiting = 0, active = 0 }) => waiting + active === 0,
          () => false,
        ),
    passTime: async () => {
      await expireLocks();
      await sql(`update outbox set created_at = created_at - interval '1 hour' where sent_at is null`);
    },
    isScheduled: async () => (await queue('day').getJobSchedulersCount()) > 0,
    unhandled: () =>
      programs.flatMap((each) => each.lines.filter((line) => /unhandled|uncaught/i.test(line))),
    lastLines: () => programs.flatMap((each) => each.lines.slice(-6)),
    afterwards: (work) => void later.push(work),
    close: async () => {
      await Promise.all(programs.map((each) => each.kill()));
      await closeQueues();
      await pause(20);
      await world.drop(database);
      for (const work of later) await work();
    },
  };
}
