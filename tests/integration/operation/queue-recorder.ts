import { Redis } from 'ioredis';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';

export type Recorder = { all: () => Promise<string>; close: () => Promise<void> };

/** Keeps everything that is written into the queue from now on, also what is removed again when a job is done. */
export function recordQueue(place: QueuePlace): Promise<Recorder> {
  return place.kind === 'redis' ? recordRedis(place.url) : recordPostgres();
}

async function recordRedis(url: string): Promise<Recorder> {
  const redis = new Redis(url);
  const monitor = await redis.monitor();
  const commands: string[] = [];
  monitor.on('monitor', (_time: string, args: string[]) => commands.push(args.join(' ')));
  return {
    all: async () => {
      const kept: string[] = [];
      for (const key of await redis.keys('*'))
        kept.push(key, ((await redis.dumpBuffer(key)) ?? '').toString());
      return [...commands, ...kept].join('\n');
    },
    close: async () => {
      monitor.disconnect();
      await redis.quit();
    },
  };
}

async function recordPostgres(): Promise<Recorder> {
  await ownerQuery(`create table if not exists bullmq_seen (line text)`);
  await ownerQuery(`create or replace function note_queue() returns trigger language plpgsql security definer
    set search_path = public as $$ begin insert into bullmq_seen values (to_jsonb(new)::text); return new; end $$`);
  await ownerQuery(`do $$ declare t record; begin
    for t in select relname from pg_class where relnamespace = 'bullmq'::regnamespace and relkind in ('r', 'p') loop
      execute format('create trigger note after insert or update on bullmq.%I for each row execute function note_queue()', t.relname);
    end loop; end $$`);
  return {
    all: async () => {
      const rows = await ownerQuery<{ line: string }>('select line from bullmq_seen');
      return rows.map((row) => row.line).join('\n');
    },
    close: async () => undefined,
  };
}
