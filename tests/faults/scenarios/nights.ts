import assert from 'node:assert/strict';
import { NIGHT_BATCH_SIZE } from '#lib/jobs/night-batch.ts';
import { BOTH, type Fault, type Table } from '../fault.ts';
import { assertSame, meaningOf } from '../meaning.ts';
import { NIGHT } from '../night.ts';
import { pause } from '../pause.ts';
import { doneNights, nightsDone, owedAt, untilShare } from '../run-night.ts';
import type { Stage } from '../stage.ts';

/** A night from its beginning to its end, with one worker and nothing wrong. */
export async function playNight(stage: Stage): Promise<void> {
  const worker = await stage.worker();
  await nightsDone(stage);
  await worker.stop();
}

const undisturbedNight = (table: Table) => table.undisturbed('night', playNight);

/** True once a batch is in its transaction. */
async function isAtWork(stage: Stage): Promise<boolean> {
  const [seen] = await stage.sql<{ n: number }>(
    `select count(*)::int as n from pg_locks l join pg_class c on c.oid = l.relation
     where c.relname = 'week_rollup' and l.pid <> pg_backend_pid()
       and l.database = (select oid from pg_database where datname = current_database())`,
  );
  return (seen?.n ?? 0) > 0;
}

function overBefore({ clients, kills }: Stage['sizes'], at: number): string {
  return `the night of ${clients} clients was over after ${at} of ${kills} kills: take fewer kills or more clients`;
}

export const killed: Fault = {
  name: 'killed',
  what: 'the worker killed with -9 at random points of a night',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    const { kills, clients } = stage.sizes;
    const owed = await owedAt(stage);
    // What two batches at work, and two behind them, may finish while the last kill is under way.
    const inHand = Math.min(4 * NIGHT_BATCH_SIZE, owed / 4);
    let [inBatch, expired] = [0, 0];
    let reach = 60;
    for (let at = 0; at < kills; at += 1) {
      const worker = await stage.worker();
      const from = Date.now();
      for (let looked = from; !(await isAtWork(stage)); await pause(5)) {
        if (Date.now() - looked < 2_500) continue;
        // All that is left is in the hands of workers that are dead.
        await stage.expireLocks();
        await stage.tick();
        expired += 1;
        looked = Date.now();
        if ((await owedAt(stage)) === 0) throw new Error(overBefore(stage.sizes, at));
        if (looked - from > 60_000) throw new Error('the worker finds nothing to do');
      }
      // As many kills as are wanted have to fall into the night: each has its share of it, and ends with it at the latest.
      const share = ((owed - inHand) * (at + 1)) / (kills + 1);
      const isAhead = (await doneNights(stage)) >= share;
      reach = isAhead ? Math.max(25, reach / 2) : Math.min(5_000, reach * 1.5);
      const end = Date.now() + stage.draw.uniform(0, reach);
      while (Date.now() < end && (isAhead || (await doneNights(stage)) < share)) await pause(10);
      if (await isAtWork(stage)) inBatch += 1;
      await worker.kill();
    }
    const left = await owedAt(stage);
    assert.ok(left > 0, overBefore(stage.sizes, kills));
    await stage.worker();
    await nightsDone(stage, { onQuiet: stage.expireLocks });
    assertSame(await meaningOf(stage), expected);
    return `${kills} kills, ${inBatch} inside a batch; ${owed} nights of ${clients} clients; locks let run out ${expired} times`;
  },
};

export const stalled: Fault = {
  name: 'stalled',
  what: 'one job stalled four times; the library gives up after two',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    // Nobody gets past the ledger's lock, so that each worker is killed with the same jobs in its hands.
    await stage.sql('alter table week_rollup rename to week_rollup_away');
    await stage.sql(
      `create view week_rollup as select * from week_rollup_away where pg_sleep(3600) is not null`,
    );
    await stage.sql('grant select on week_rollup to plumbline_app');
    for (let times = 0; times < 4; times += 1) {
      const worker = await stage.worker();
      await stage.expireLocks();
      for (let tries = 0; !(await sleeps(stage)); tries += 1) {
        if (tries > 400) throw new Error('a stalled job was not taken up again');
        await pause(50);
      }
      await worker.kill();
      await stage.sql(`select pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and usename = 'plumbline_app' and pid <> pg_backend_pid()`);
    }
    await stage.sql('drop view week_rollup');
    await stage.sql('alter table week_rollup_away rename to week_rollup');
    await stage.worker();
    await stage.expireLocks();
    await nightsDone(stage);
    assertSame(await meaningOf(stage), expected);
    return 'taken up after each stall, then finished';
  },
};

async function sleeps(stage: Stage): Promise<boolean> {
  const rows = await stage.sql(
    `select from pg_stat_activity where datname = current_database() and wait_event = 'PgSleep'`,
  );
  return rows.length > 0;
}

/** The worker looks every ten seconds whether its schedule is there. */
async function scheduledAgain(stage: Stage): Promise<void> {
  for (let tries = 0; tries < 150; tries += 1) {
    if (await stage.isScheduled()) return;
    await pause(200);
  }
  throw new Error('the schedule is gone: no night would run until a worker is started');
}

export const queueEmptied: Fault = {
  name: 'queue-emptied',
  what: 'everything in the queue deleted in the middle of a night, the schedule with it',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    const owed = await owedAt(stage);
    await stage.worker();
    const done = await untilShare(stage, owed, stage.draw.uniform(0.1, 0.4));
    await stage.emptyQueue();
    await nightsDone(stage, { ticks: false });
    await scheduledAgain(stage);
    assertSame(await meaningOf(stage), expected);
    return `emptied at ${done} of ${owed} nights`;
  },
};

export const redisKilled: Fault = {
  name: 'redis-killed',
  what: 'Redis killed in the middle of a night and empty when it is back',
  kinds: ['redis'],
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    const owed = await owedAt(stage);
    await stage.worker();
    const done = await untilShare(stage, owed, stage.draw.uniform(0.1, 0.4));
    stage.world.redis?.kill();
    await pause(1_500);
    await stage.world.redis?.start();
    await nightsDone(stage, { ticks: false });
    await scheduledAgain(stage);
    assertSame(await meaningOf(stage), expected);
    return `killed at ${done} of ${owed} nights, away for 1.5 s`;
  },
};

export const postgresRestarted: Fault = {
  name: 'postgres-restarted',
  what: 'PostgreSQL ended at once and started again in the middle of a night',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    const owed = await owedAt(stage);
    let worker = await stage.worker();
    const done = await untilShare(stage, owed, stage.draw.uniform(0.1, 0.4));
    await stage.world.restartPostgres(1_000);
    let again = 0;
    await nightsDone(stage, {
      onQuiet: async () => {
        if (worker.child.exitCode === null) return;
        worker = await stage.worker(); // as an orchestrator starts it again
        again += 1;
      },
    });
    assert.equal(again, 0, `the worker ended: ${worker.lines.slice(-3).join(' ')}`);
    assertSame(await meaningOf(stage), expected);
    return `restarted at ${done} of ${owed} nights`;
  },
};

export const twoWorkers: Fault = {
  name: 'two-workers',
  what: 'two workers, and a coach who runs the nights by hand again and again',
  kinds: BOTH,
  run: async (table) => {
    const expected = await undisturbedNight(table);
    const stage = await table.open();
    const web = await stage.web();
    const [lead] = await stage.sql<{ id: string }>('select user_id as id from member');
    const cookie = await (await fetch(`${web.url}/cookie?of=${lead?.id}`)).text();
    await Promise.all([stage.worker(), stage.worker()]);
    let asked = 0;
    const asking = (async () => {
      while ((await owedAt(stage)) > 0) {
        const answer = await fetch(`${web.url}/api/nights/run`, {
          method: 'POST',
          headers: { cookie },
          body: '{}',
        });
        assert.equal(answer.status, 200, await answer.text());
        await stage.tick();
        asked += 1;
      }
    })();
    await Promise.all([asking, nightsDone(stage)]);
    assertSame(await meaningOf(stage), expected);
    return `asked for ${asked} times by hand`;
  },
};

export const poison: Fault = {
  name: 'poison',
  what: 'the data of one client make a check throw',
  kinds: BOTH,
  run: async (table) => {
    const whole = await undisturbedNight(table);
    const stage = await table.open();
    const [victim] = await stage.sql<{ id: string; name: string }>(
      `select id, name from client where zone = 'UTC' order by name limit 1`,
    );
    const others = (lines: string[]) =>
      lines.filter(
        (line) => !line.includes(`${victim?.name} `) && !line.startsWith('run:') && !line.startsWith('day:'),
      );
    const expected = others(whole);
    await stage.sql(
      `update day_rollup set facts = '[{"id": "broken"}]' where client_id = $1 and date = (select max(date) from day_rollup where client_id = $1)`,
      [victim?.id],
    );
    const owed = await owedAt(stage);
    await stage.worker();
    for (let tries = 0; (await doneNights(stage)) < owed - 1 || (await attempts(stage)) === 0; tries += 1) {
      if (tries > 600) throw new Error('the others were not finished');
      await pause(100);
    }
    for (let ticks = 0; (await attempts(stage)) < 5; ticks += 1) {
      if (ticks > 100) throw new Error(`tried ${await attempts(stage)} times only`);
      await stage.tick();
      await pause(250);
    }
    assert.equal(await owedAt(stage), 0, 'a night that failed five times waits for a person');
    assertSame(others(await meaningOf(stage)), expected);
    const [said] = await stage.sql<{ failure: string }>(
      'select failure from night_client where failed_at is not null',
    );
    assert.match(said?.failure ?? '', /^\w*Error/);
    const [run] = await stage.sql<{ failed: number }>(
      'select clients_failed as failed from night_run where local_date = $1',
      [NIGHT],
    );
    assert.equal(run?.failed, 1);
    return `reported as "${said?.failure}", tried 5 times; all others as without it`;
  },
};

async function attempts(stage: Stage): Promise<number> {
  const [row] = await stage.sql<{ n: number }>(
    'select coalesce(max(attempts), 0)::int as n from night_client where done_at is null',
  );
  return row?.n ?? 0;
}
