import pg from 'pg';
import { expect, it } from 'vitest';
import { listOwedNightsOf } from '#lib/db/ledger.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { draws } from '#tests/bench/detect/random.ts';
import { makeTestClient, makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';

// Clients who travel: their zone changes at any hour, also across the date line, and the worker is away for days. Each
// local date has one night, and none is left out. A night that is owed twice breaks the ledger's key.
const ZONES = [
  ...['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'Pacific/Apia', 'Pacific/Chatham', 'Asia/Kathmandu'],
  ...['Europe/Lisbon', 'Europe/Berlin', 'America/New_York', 'America/Santiago', 'Australia/Lord_Howe', 'UTC'],
];
const HOUR = 3_600_000;
const FROM = Date.parse('2026-03-26T12:00:00Z'); // Europe's clocks change on the 29th, Chatham's and Santiago's on 5 April
const HOURS = 24 * 11;
/** How often the worker looks; zones change in every hour. */
const LOOK_HOURS = 3;

it('a zone that changes at any hour doubles and skips nothing', async () => {
  const team = await makeTestTeam();
  const draw = draws(7);
  const clients: string[] = [];
  for (let at = 0; at < 12; at += 1) {
    const { clientId } = await makeTestClient(team, { zone: draw.pick(ZONES) });
    clients.push(clientId);
  }
  const joined = new Date(FROM - 3 * 24 * HOUR);
  await ownerQuery('update client set joined_at = $2, invited_at = $2 where team_id = $1', [
    team.teamId,
    joined,
  ]);
  const db = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await db.connect();
  let awayUntil = 0;
  for (let hour = 0; hour < HOURS; hour += 1) {
    const at = new Date(FROM + hour * HOUR);
    const movers = clients.filter(() => draw.chance(1 / 30));
    for (const id of movers)
      await db.query('update client set zone = $2 where id = $1', [id, draw.pick(ZONES)]);
    if (draw.chance(1 / 80)) awayUntil = hour + draw.int(20, 70);
    const looks = hour % LOOK_HOURS === 0 && hour >= awayUntil;
    if (!looks && hour < HOURS - 1) continue;
    const owed = await listOwedNightsOf(team.scope, null, at);
    if (owed.length > 0)
      await db.query(
        `insert into night_client (team_id, client_id, local_date, done_at, rules_version)
         select $1, id, day, $4, 'test' from unnest($2::uuid[], $3::date[]) as each(id, day)`,
        [team.teamId, owed.map((night) => night.clientId), owed.map((night) => night.localDate), at],
      );
  }
  await db.end();
  for (const clientId of clients) {
    const nights = await ownerQuery<{ day: string }>(
      'select local_date::text as day from night_client where client_id = $1 order by 1',
      [clientId],
    );
    const days = nights.map(({ day }) => day);
    const first = days[0] ?? '';
    expect(days.length).toBeGreaterThan(11);
    expect(days).toEqual(Array.from(days, (_, index) => addDays(first, index)));
    expect(days).toContain('2026-04-04');
  }
}, 120_000);
