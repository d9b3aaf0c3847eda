import { randomUUID } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { listTeamStays } from '#lib/db/team-stays.ts';
import { parseHistory } from '#lib/schemas/history.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';
import { makeRung } from './arrange.ts';

let team: TestTeam;
let [first, second, third]: string[] = [];
const clients: Record<string, string> = {};

/** A rung after the first on the same ladder. */
async function rungAt(position: number): Promise<string> {
  const id = randomUUID();
  await ownerQuery(
    `insert into rung (team_id, id, ladder_id, drill_id, position, name, pass_sets, pass_target, pass_days, usual_weeks)
     select team_id, $2, ladder_id, drill_id, $3, 'later', 3, 20, 3, 8 from rung where id = $1`,
    [first, id, position],
  );
  return id;
}

async function client(name: string, placements: [rung: string | undefined, side: string, from: string][]) {
  const { clientId } = await makeTestClient(team, { name, zone: 'UTC' });
  clients[name] = clientId;
  for (const [rung, side, from] of placements)
    await ownerQuery(
      `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
       select $1, $2, ladder_id, id, $4, $5 from rung where id = $3`,
      [team.teamId, clientId, rung, side, from],
    );
  return clientId;
}

beforeAll(async () => {
  team = await makeTestTeam();
  first = await makeRung(team);
  second = await rungAt(2);
  third = await rungAt(3);
  await client('Passed', [
    [first, 'both', '2026-01-01'],
    [second, 'both', '2026-01-21'],
  ]);
  await client('Placed twice', [
    [first, 'both', '2026-01-01'],
    [first, 'both', '2026-01-10'],
    [third, 'both', '2026-02-10'],
  ]);
  await client('Sides apart', [
    [first, 'both', '2026-01-01'],
    [second, 'left', '2026-01-31'],
  ]);
  await client('Moved back', [
    [second, 'both', '2026-01-01'],
    [first, 'both', '2026-01-16'],
  ]);
  await client('Two on a day', [
    [second, 'both', '2026-02-20'],
    [third, 'left', '2026-02-20'],
  ]);
  const left = await client('Left', [[first, 'both', '2026-01-01']]);
  await ownerQuery(`update client set left_at = '2026-01-11T12:00:00Z' where id = $1`, [left]);
});

const staysOn = async (rung: string | undefined, asOf: string) => {
  const stays = await withTeamPg(team.scope, (tx) => listTeamStays(tx, [rung ?? ''], asOf));
  const names = new Map(Object.entries(clients).map(([name, id]) => [id, name]));
  return (stays.get(rung ?? '') ?? [])
    .map((stay) => `${names.get(stay.clientId)}: ${stay.days}${stay.passed ? ' passed' : ''}`)
    .sort();
};
const usualOf = async (name: string, asOf: string, rung = first) => {
  const id = clients[name] ?? '';
  const histories = await withTeamPg(team.scope, (tx) => loadHistories(tx, [id], { from: null, asOf }));
  return histories.get(id)?.rungs.find((one) => one.id === rung)?.usualDaysHere;
};

it('takes a stay from a placement to the next rung; there, back and left are not passed', async () => {
  expect(await staysOn(first, '2026-03-01')).toEqual([
    'Left: 10',
    'Moved back: 44',
    'Passed: 20 passed',
    'Placed twice: 40 passed',
    'Sides apart: 30 passed',
    'Sides apart: 59',
  ]);
  expect(await staysOn(second, '2026-03-01')).toEqual([
    'Moved back: 15',
    'Passed: 39',
    'Sides apart: 29',
    'Two on a day: 9',
  ]);
  // Of two placements on one day the one for a single side counts for that side.
  expect(await staysOn(third, '2026-03-01')).toEqual(['Placed twice: 19', 'Two on a day: 9']);
});

it('reads nothing after the evening asked about', async () => {
  expect(await staysOn(first, '2026-01-21')).toEqual([
    'Left: 10',
    'Moved back: 5',
    'Passed: 20 passed',
    'Placed twice: 20',
    'Sides apart: 20',
  ]);
  expect(await staysOn(first, '2026-01-08')).not.toContainEqual(expect.stringContaining('passed'));
});

it('puts the median of the team on the rung of every client, and none where it is not reached', async () => {
  // 20: 4 of 5 at risk stay; 30: 3 of 4; 40: 2 of 3: 0.8 x 0.75 x 0.667 = 0.4.
  expect(await usualOf('Moved back', '2026-03-01')).toEqual({ days: 40, passed: 3 });
  expect(await usualOf('Passed', '2026-03-01')).toEqual({ days: 40, passed: 3 });
  expect(await usualOf('Passed', '2026-02-09')).toBeUndefined();
  expect(await usualOf('Passed', '2026-03-01', second)).toBeUndefined();
});

it('asks once for all clients, only when asked, and fits the format', async () => {
  const ids = Object.values(clients);
  const queries = await withTeamPg(team.scope, async (tx) => {
    const asked: string[] = [];
    const counting = new Proxy(tx.client, {
      get: (target, name) => {
        const value = Reflect.get(target, name);
        if (name !== 'query') return typeof value === 'function' ? value.bind(target) : value;
        return (sql: string, values: unknown[]) => {
          asked.push(sql);
          return target.query(sql, values);
        };
      },
    });
    const counted = { teamId: tx.teamId, client: counting };
    await loadHistories(counted, ids, { from: '2026-01-01' });
    const without = asked.length;
    const histories = await loadHistories(counted, ids, { from: '2026-01-01', asOf: '2026-03-01' });
    for (const history of histories.values()) expect(parseHistory(history)).toEqual(history);
    return [without, asked.length - without];
  });
  expect(queries[1]).toBe((queries[0] ?? 0) + 1);
});
