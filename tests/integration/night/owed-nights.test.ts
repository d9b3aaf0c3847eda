import { beforeAll, describe, expect, it } from 'vitest';
import { listOwedNights, NIGHTS_BACK } from '#lib/db/ledger.ts';
import { batchesOf } from '#lib/usecases/owe-nights.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

let team: TestTeam;
beforeAll(async () => {
  team = await makeTestTeam();
});

async function clientIn(zone: string, joinedAt: string, standing = 'in-training'): Promise<string> {
  const { clientId } = await makeTestClient(team, { zone, standing });
  await ownerQuery('update client set joined_at = $2, invited_at = $2 where id = $1', [clientId, joinedAt]);
  return clientId;
}

async function owedDates(clientId: string, at: string): Promise<string[]> {
  const owed = await listOwedNights(new Date(at));
  return owed.filter((night) => night.clientId === clientId).map((night) => night.localDate);
}

async function finish(clientId: string, ...dates: string[]): Promise<void> {
  await ownerQuery(
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version)
     select $1, $2, unnest($3::date[]), now(), 'test'`,
    [team.teamId, clientId, dates],
  );
}

describe('a night is owed', () => {
  it('from 03:00 of the next local date on, not a minute earlier', async () => {
    const client = await clientIn('Europe/Lisbon', '2026-01-10T10:00:00Z');
    expect(await owedDates(client, '2026-01-11T02:59:00Z')).toEqual([]);
    expect(await owedDates(client, '2026-01-11T03:00:00Z')).toEqual(['2026-01-10']);
  });

  it.each([
    ['Pacific/Kiritimati', '2026-01-10T13:00:00Z', '2026-01-10'], // UTC+14: 03:00 on the 11th
    ['Pacific/Pago_Pago', '2026-01-11T14:00:00Z', '2026-01-10'], // UTC-11: 03:00 on the 11th
    ['Asia/Kathmandu', '2026-01-10T21:15:00Z', '2026-01-10'], // UTC+5:45
  ])('in %s exactly at its own 03:00', async (zone, due, date) => {
    const client = await clientIn(zone, '2026-01-10T12:00:00Z'); // noon UTC is the 10th, or the 11th in +14
    await ownerQuery(`update client set joined_at = '2026-01-09T23:30:00Z' where id = $1`, [client]);
    const before = new Date(Date.parse(due) - 60_000).toISOString();
    expect(await owedDates(client, before)).not.toContain(date);
    expect(await owedDates(client, due)).toContain(date);
  });

  it('once on the 23-hour day: New York, 8 March 2026', async () => {
    const client = await clientIn('America/New_York', '2026-03-07T15:00:00Z');
    // 02:00 jumps to 03:00 at 07:00 UTC
    expect(await owedDates(client, '2026-03-08T06:59:59Z')).toEqual([]);
    expect(await owedDates(client, '2026-03-08T07:00:00Z')).toEqual(['2026-03-07']);
    await finish(client, '2026-03-07');
    expect(await owedDates(client, '2026-03-09T06:59:00Z')).toEqual([]);
    expect(await owedDates(client, '2026-03-09T07:00:00Z')).toEqual(['2026-03-08']);
  });

  it('once on the 25-hour day: Berlin, 25 October 2026', async () => {
    const client = await clientIn('Europe/Berlin', '2026-10-24T10:00:00Z');
    expect(await owedDates(client, '2026-10-25T01:30:00Z')).toEqual([]); // the second 02:30
    expect(await owedDates(client, '2026-10-25T02:00:00Z')).toEqual(['2026-10-24']);
    await finish(client, '2026-10-24');
    expect(await owedDates(client, '2026-10-26T01:59:00Z')).toEqual([]);
    expect(await owedDates(client, '2026-10-26T02:00:00Z')).toEqual(['2026-10-25']);
  });

  it('at midnight gaps too: Santiago, 6 September 2026 begins at 01:00', async () => {
    const client = await clientIn('America/Santiago', '2026-09-05T15:00:00Z');
    expect(await owedDates(client, '2026-09-08T15:00:00Z')).toEqual([
      '2026-09-05',
      '2026-09-06',
      '2026-09-07',
    ]);
  });

  it('never for a date that did not exist: Apia, 30 December 2011', async () => {
    const client = await clientIn('Pacific/Apia', '2011-12-28T20:00:00Z');
    expect(await owedDates(client, '2012-01-01T20:00:00Z')).toEqual([
      '2011-12-28',
      '2011-12-29',
      '2011-12-31',
      '2012-01-01',
    ]);
  });

  it('for each of three nights the machine was off, oldest first, one at a time for each client', async () => {
    const client = await clientIn('Europe/Lisbon', '2026-02-01T10:00:00Z');
    await finish(client, '2026-02-01', '2026-02-02');
    const at = '2026-02-06T09:00:00Z';
    expect(await owedDates(client, at)).toEqual(['2026-02-03', '2026-02-04', '2026-02-05']);
    const mine = (await listOwedNights(new Date(at))).filter((night) => night.clientId === client);
    expect(batchesOf(mine)).toEqual([{ teamId: team.teamId, localDate: '2026-02-03', clientIds: [client] }]);
  });

  it('at most 14 nights back', async () => {
    const client = await clientIn('UTC', '2025-01-01T00:00:00Z');
    const dates = await owedDates(client, '2026-02-20T12:00:00Z');
    expect(dates).toHaveLength(NIGHTS_BACK);
    expect([dates[0], dates.at(-1)]).toEqual(['2026-02-06', '2026-02-19']);
  });

  it.each([
    ['invited', true],
    ['starting', true],
    ['in-training', true],
    ['ending', true],
    ['back', true],
    ['paused', false],
    ['left', false],
  ])('standing %s: %s', async (standing, owed) => {
    const client = await clientIn('UTC', '2026-05-01T00:00:00Z', standing);
    expect(await owedDates(client, '2026-05-02T12:00:00Z')).toEqual(owed ? ['2026-05-01'] : []);
  });

  it('no more after five failures, until somebody asks', async () => {
    const client = await clientIn('UTC', '2026-06-01T00:00:00Z');
    const fail = (attempts: number) =>
      ownerQuery(
        `insert into night_client (team_id, client_id, local_date, failed_at, attempts, rules_version)
         values ($1, $2, '2026-06-01', now(), $3, 'test')
         on conflict (team_id, client_id, local_date) do update set attempts = excluded.attempts`,
        [team.teamId, client, attempts],
      );
    await fail(4);
    expect(await owedDates(client, '2026-06-02T12:00:00Z')).toEqual(['2026-06-01']);
    await fail(5);
    expect(await owedDates(client, '2026-06-02T12:00:00Z')).toEqual([]);
  });

  it('also for a zone that the database does not know: as in UTC, and the others go on', async () => {
    const lost = await clientIn('Nowhere/Atlantis', '2026-07-01T05:00:00Z');
    const other = await clientIn('Europe/Lisbon', '2026-07-01T05:00:00Z');
    expect(await owedDates(lost, '2026-07-02T03:00:00Z')).toEqual(['2026-07-01']);
    expect(await owedDates(other, '2026-07-02T03:00:00Z')).toEqual(['2026-07-01']);
  });

  it('neither twice nor never when the zone changes at noon', async () => {
    const client = await clientIn('Europe/Lisbon', '2026-08-01T05:00:00Z');
    await finish(client, '2026-08-01', '2026-08-02');
    await ownerQuery(`update client set zone = 'Pacific/Kiritimati' where id = $1`, [client]);
    expect(await owedDates(client, '2026-08-03T12:00:00Z')).toEqual([]); // 02:00 on the 4th there
    expect(await owedDates(client, '2026-08-03T13:00:00Z')).toEqual(['2026-08-03']);
  });
});

it('every zone has every date of the coming year', async () => {
  const rows = await ownerQuery<{ zone: string }>(
    `with zones as (select name as zone from pg_timezone_names
       where name like '%/%' and name not like 'posix/%' and name not like 'right/%'),
     days as (select generate_series('2026-01-01'::date, '2026-12-31', '1 day')::date as day)
     select distinct zone from zones, days where not local_date_exists(zone, day)`,
  );
  expect(rows).toEqual([]);
});
