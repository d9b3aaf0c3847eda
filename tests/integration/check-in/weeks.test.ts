import { beforeEach, expect, it } from 'vitest';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { deleteRollups, writeRollups } from '#lib/db/rollups.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

// Monday 2 March 2026 begins the week.
let team: TestTeam;
let clientId: string;

beforeEach(async () => {
  team = await makeTestTeam('Weeks');
  ({ clientId } = await makeTestClient(team));
});

const day = (date: string, facts = '[]') => ({
  clientId,
  date,
  state: 'rest' as const,
  load: 0,
  pain: null,
  count: 1,
  facts,
});

const write = (...days: ReturnType<typeof day>[]) => withTeamPg(team.scope, (tx) => writeRollups(tx, days));

async function weeks(): Promise<Record<string, unknown>> {
  const rows = await ownerQuery<{ week: string; days: string }>(
    'select week::text, days from week_rollup where client_id = $1 order by week',
    [clientId],
  );
  return Object.fromEntries(rows.map(({ week, days }) => [week, JSON.parse(`[${days}]`)]));
}

it('days lie in the week of their Monday, in their order, over the end of a year too', async () => {
  await write(day('2026-03-08'), day('2026-03-02'), day('2026-03-09'), day('2026-01-01'), day('2025-12-31'));
  expect(await weeks()).toEqual({
    '2025-12-29': [
      ['2025-12-31', []],
      ['2026-01-01', []],
    ],
    '2026-03-02': [
      ['2026-03-02', []],
      ['2026-03-08', []],
    ],
    '2026-03-09': [['2026-03-09', []]],
  });
});

it('a day that changes or goes does so in its week, and a week without days goes', async () => {
  await write(day('2026-03-03'), day('2026-03-04'));
  await write(day('2026-03-04', '[["changed"]]'));
  expect(await weeks()).toEqual({
    '2026-03-02': [
      ['2026-03-03', []],
      ['2026-03-04', [['changed']]],
    ],
  });
  const drop = (date: string) => withTeamPg(team.scope, (tx) => deleteRollups(tx, [{ clientId, date }]));
  await drop('2026-03-03');
  expect(await weeks()).toEqual({ '2026-03-02': [['2026-03-04', [['changed']]]] });
  await drop('2026-03-04');
  expect(await weeks()).toEqual({});
});

it('two acts at once that write days of one week both are in it', async () => {
  let commit: () => void = () => undefined;
  const held = new Promise<void>((done) => {
    commit = done;
  });
  let isWritten: () => void = () => undefined;
  const written = new Promise<void>((done) => {
    isWritten = done;
  });
  const first = withTeamPg(team.scope, async (tx: TeamPg) => {
    await writeRollups(tx, [day('2026-03-03')]);
    isWritten();
    await held;
  });
  await written;
  const second = write(day('2026-03-05'));
  await new Promise((next) => setTimeout(next, 200)); // it waits by now
  commit();
  await Promise.all([first, second]);
  expect(await weeks()).toEqual({
    '2026-03-02': [
      ['2026-03-03', []],
      ['2026-03-05', []],
    ],
  });
});

it('a client who goes takes the weeks along', async () => {
  await write(day('2026-03-03'));
  await ownerQuery('delete from client where id = $1', [clientId]);
  expect(await weeks()).toEqual({});
});
