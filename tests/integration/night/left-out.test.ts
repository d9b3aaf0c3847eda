import { beforeAll, beforeEach, expect, it } from 'vitest';
import type { Actor } from '#lib/auth/actor.ts';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import { loadNights } from '#lib/usecases/load-nights.ts';
import { sayLeftOutNights } from '#lib/usecases/say-left-out-nights.ts';
import {
  makeTestClient,
  makeTestTeam,
  ownerQuery,
  type TestTeam,
} from '#tests/integration/support/database.ts';

let team: TestTeam;
let lead: Actor;
beforeAll(async () => {
  team = await makeTestTeam();
  const { scope, userId, memberId } = team;
  lead = { scope, userId, memberId, role: 'lead', clientId: null, name: 'Lead', teamName: 'Team' };
});
beforeEach(() => ownerQuery('delete from client where team_id = $1', [team.teamId]));

async function clientSince(joinedAt: string, zone = 'UTC', standing = 'in-training'): Promise<string> {
  const { clientId } = await makeTestClient(team, { zone, standing });
  await ownerQuery('update client set joined_at = $2, invited_at = $2, created_at = $2 where id = $1', [
    clientId,
    joinedAt,
  ]);
  return clientId;
}

const said = (clientId: string) =>
  ownerQuery(
    `select from_date::text as from, to_date::text as to, nights from night_left_out where client_id = $1 order by 1`,
    [clientId],
  );

async function finishOwed(at: string): Promise<string[]> {
  const owed = await listOwedNightsOf(team.scope, null, new Date(at));
  for (const { clientId, localDate } of owed)
    await ownerQuery(
      `insert into night_client (team_id, client_id, local_date, done_at, rules_version) values ($1, $2, $3, $4, 'test')`,
      [team.teamId, clientId, localDate, at],
    );
  return owed.map((night) => night.localDate);
}

it('what is longer ago than is caught up is written down once, the rest stays owed', async () => {
  const client = await clientSince('2026-01-01T05:00:00Z');
  const back = new Date('2026-02-20T12:00:00Z');
  const twice = await Promise.all([sayLeftOutNights(back), sayLeftOutNights(back)]);
  expect(twice).toContain(1);
  expect(await sayLeftOutNights(back)).toBe(0);
  expect(await said(client)).toEqual([{ from: '2026-01-01', to: '2026-02-05', nights: 36 }]);
  const owed = await finishOwed(back.toISOString());
  expect([owed.length, owed[0], owed.at(-1)]).toEqual([14, '2026-02-06', '2026-02-19']);
  // Nothing was missed since, and nothing more is said.
  await finishOwed('2026-02-21T12:00:00Z');
  expect(await sayLeftOutNights(new Date('2026-02-21T12:00:00Z'))).toBe(0);
});

it('a second long absence is said from where the first ended', async () => {
  const client = await clientSince('2026-01-01T05:00:00Z');
  await sayLeftOutNights(new Date('2026-02-20T12:00:00Z'));
  await finishOwed('2026-02-20T12:00:00Z');
  await sayLeftOutNights(new Date('2026-03-20T12:00:00Z'));
  expect(await said(client)).toEqual([
    { from: '2026-01-01', to: '2026-02-05', nights: 36 },
    { from: '2026-02-20', to: '2026-03-05', nights: 14 },
  ]);
});

it('day for day where nothing is run at all, and not before a client was known here', async () => {
  const client = await clientSince('2026-01-10T05:00:00Z');
  await ownerQuery(`update client set joined_at = '2024-01-01' where id = $1`, [client]);
  for (const day of ['24', '25', '26']) await sayLeftOutNights(new Date(`2026-01-${day}T12:00:00Z`));
  expect(await said(client)).toEqual([
    { from: '2026-01-10', to: '2026-01-10', nights: 1 },
    { from: '2026-01-11', to: '2026-01-11', nights: 1 },
  ]);
});

it('a date that never was is not left out, nor are nights of somebody paused, nor failed ones', async () => {
  const apia = await clientSince('2011-12-29T20:00:00Z', 'Pacific/Apia');
  const paused = await clientSince('2011-12-01T20:00:00Z', 'UTC', 'paused');
  const failed = await clientSince('2011-12-31T05:00:00Z');
  await ownerQuery(
    `insert into night_client (team_id, client_id, local_date, failed_at, attempts, rules_version) values ($1, $2, '2011-12-31', now(), 2, 'test')`,
    [team.teamId, failed],
  );
  await sayLeftOutNights(new Date('2012-01-15T20:00:00Z'));
  expect(await said(apia)).toEqual([{ from: '2011-12-29', to: '2012-01-01', nights: 3 }]);
  expect(await said(paused)).toEqual([]);
  expect(await said(failed)).toEqual([]);
});

it('stands on the page about nights', async () => {
  const at = new Date('2026-02-20T12:00:00Z');
  await clientSince('2026-01-01T05:00:00Z');
  await clientSince('2026-01-01T09:00:00Z');
  await sayLeftOutNights(at);
  const { lines } = await loadNights(lead, null, at);
  expect(lines).toEqual([
    {
      kind: 'gap',
      from: '2026-01-01',
      words: expect.stringContaining('36 nights of 2 clients were not run and are too long ago'),
    },
  ]);
});
