import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { pool } from '#lib/db/client.ts';
import { runNightBatch } from '#lib/usecases/run-night-batch.ts';
import { ownerQuery } from '#tests/integration/support/database.ts';
import { forgetNights, type Group, makeGroup } from './arrange.ts';
import { allRows, meaning } from './rows.ts';

const now = new Date('2026-04-01T03:05:00Z');
let group: Group;
let twin: Group;

beforeAll(async () => {
  group = await makeGroup();
  twin = await makeGroup();
});

beforeEach(async () => {
  await forgetNights(group.team.teamId);
  await forgetNights(twin.team.teamId);
});

const run = ({ team, clientIds }: Group) =>
  runNightBatch(team.scope, { localDate: '2026-03-31', clientIds }, now);

describe('a client whose data a check cannot read', () => {
  it('fails alone, in the ledger and in the run, and is done once it can be read', async () => {
    const [poisoned = ''] = group.clientIds;
    const kept = await ownerQuery<{ date: string; facts: string }>(
      `select date::text, facts from day_rollup where client_id = $1 order by date limit 1`,
      [poisoned],
    );
    await ownerQuery(
      `update day_rollup set facts = '[{"id": "broken"}]' where client_id = $1 and date = $2`,
      [poisoned, kept[0]?.date],
    );
    expect(await run(group)).toEqual({ done: 2, failed: 1 });
    const [failed] = await ownerQuery<{ failure: string; attempts: number; done_at: Date | null }>(
      'select failure, attempts, done_at from night_client where client_id = $1',
      [poisoned],
    );
    expect(failed).toMatchObject({ attempts: 1, done_at: null });
    expect(failed?.failure).toMatch(/^TypeError at lib\//);
    await ownerQuery('update day_rollup set facts = $3 where client_id = $1 and date = $2', [
      poisoned,
      kept[0]?.date,
      kept[0]?.facts,
    ]);
    expect(await run(group)).toEqual({ done: 1, failed: 0 });
    const runs = await ownerQuery('select clients_done, clients_failed from night_run where team_id = $1', [
      group.team.teamId,
    ]);
    expect(runs).toEqual([{ clients_done: 3, clients_failed: 0 }]);
  });
});

describe('killed in the middle', () => {
  it('leaves nothing half, whichever statement was the last, and the next try ends as an undisturbed one', async () => {
    await run(twin);
    const expected = await meaning(twin.team.teamId);
    let statements = 0;
    for (;;) {
      await forgetNights(group.team.teamId);
      const empty = await allRows(group.team.teamId);
      const killed = await runKilledAfter(statements, group);
      if (!killed) break;
      expect(await allRows(group.team.teamId), `after ${statements} statements`).toBe(empty);
      await run(group);
      expect(await meaning(group.team.teamId), `after ${statements} statements`).toEqual(expected);
      statements += 1;
    }
    expect(statements).toBeGreaterThan(15);
  });
});

/** Runs the night on a connection that dies after so many statements. False: it needed no more than these. */
async function runKilledAfter(statements: number, which: Group): Promise<boolean> {
  const shared = pool();
  const connect = shared.connect.bind(shared);
  let left = statements;
  Object.assign(shared, {
    connect: async () => {
      const client = await connect();
      return new Proxy(client, {
        get: (target, name) => {
          if (name === 'release') return () => target.release(true);
          const value = Reflect.get(target, name);
          if (name !== 'query') return typeof value === 'function' ? value.bind(target) : value;
          return (...asked: Parameters<typeof target.query>) => {
            if (left === 0) return Promise.reject(new Error('the connection is gone'));
            left -= 1;
            return target.query(...asked);
          };
        },
      });
    },
  });
  try {
    await run(which);
    return false;
  } catch {
    return true;
  } finally {
    Object.assign(shared, { connect });
  }
}
