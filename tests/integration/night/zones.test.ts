import pg from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeTestTeam, type TestTeam } from '#tests/integration/support/database.ts';

// Every zone of the tz database that PostgreSQL brings, five years of a simulated clock, decided by the function that
// the worker asks. A short form by default: the days around each change of the clocks, looked at every hour.
// `PLUMBLINE_ZONES=all` is the whole: a look every 15 minutes through all five years, some twenty minutes.
const WHOLE = process.env.PLUMBLINE_ZONES === 'all';
const YEARS = ['2026-01-01', '2031-01-01'] as const;
const MINUTES = WHOLE ? 15 : 60;

let db: pg.Client;
let team: TestTeam;
beforeAll(async () => {
  team = await makeTestTeam();
  db = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await db.connect();
  await db.query(`set timezone = 'UTC'`);
  await db.query(`create temp table zone as
    select name from pg_timezone_names where name not like 'posix%' and name not like 'right%' and name <> 'Factory'`);
  // Days on which a zone's clocks change, and zones alike in all of them: one of each is simulated.
  await db.query(
    `create temp table change as
     select name, day::date from zone, generate_series($1::timestamptz - interval '2 days', $2::timestamptz, '1 day') day
     where timezone(name, day) <> timezone(name, day + interval '1 day') - interval '1 day'`,
    [...YEARS],
  );
  await db.query(`create temp table alike as
    select min(name) as name, count(*)::int as zones from (
      select z.name, md5(timezone(z.name, '${YEARS[0]}'::timestamptz)::text || coalesce((
        select string_agg(timezone(z.name, c.day + make_interval(mins => m))::text, ' ' order by c.day, m)
        from (select day::timestamp at time zone 'UTC' as day from change where change.name = z.name) c, generate_series(0, 1440, 15) m), '')) as sign
      from zone z) each group by sign`);
});
afterAll(() => db.end());

describe('one night for each local date, none for a date that never was', () => {
  it('knows all zones and their changes', async () => {
    const { rows } = await db.query(
      `select (select count(*)::int from zone) as zones, (select sum(zones)::int from alike) as grouped,
         (select count(distinct name)::int from change) as changing`,
    );
    expect(rows[0].zones).toBeGreaterThan(400);
    expect(rows[0].grouped).toBe(rows[0].zones);
    expect(rows[0].changing).toBeGreaterThan(100);
  });

  it('around every change: due between 03:00 and the next look, in a zone of each kind', async () => {
    const { rows } = await db.query(
      `with looks as (
         select name, at, last_night(name, at) as night, lag(last_night(name, at)) over (partition by name, day order by at) as before
         from change join alike using (name), generate_series(day::timestamptz, (day + 3)::timestamptz, make_interval(mins => $1)) at
       )
       select name, at, night, before from looks
       where before is not null and (
         -- an earlier night only where the clocks went back over 03:00, and that night is in the ledger by then
         night not in (before, before + 1, before - 1)
         or (night > before and not timezone(name, at) >= night + 1 + time '03:00')
         or (night > before and not timezone(name, at - make_interval(mins => $1)) < night + 1 + time '03:00'))
       limit 5`,
      [MINUTES],
    );
    expect(rows).toEqual([]);
  });

  it('in the ledger, as the worker would write it', async () => {
    await clientsIn(`select name from alike${WHOLE ? '' : ' where name in (select name from change)'}`);
    const windows = WHOLE
      ? [{ from: YEARS[0], to: YEARS[1] }]
      : (
          await db.query<{ from: string; to: string }>(
            `select distinct day::text as from, (day + 2)::text as to from change join alike using (name)
             where day between '2026-01-01' and '2026-12-31' order by 1`,
          )
        ).rows;
    for (const { from, to } of windows)
      await playTicks(from, to, MINUTES, WHOLE ? undefined : `select name from change where day = '${from}'`);
    expect(await faults()).toEqual([]);
    const { rows } = await db.query('select count(*)::int as n from night_client where team_id = $1', [
      team.teamId,
    ]);
    expect(rows[0].n).toBeGreaterThan(WHOLE ? 100_000 : 200);
  }, 3_600_000);

  it('Apia: 29 December 2011, then the 31st', async () => {
    await clientsIn(`select 'Pacific/Apia'::text as name`, '2011-12-27T00:00:00Z');
    await playTicks('2011-12-28', '2012-01-03', 15);
    const { rows } = await db.query(
      'select local_date::text as d from night_client where team_id = $1 order by 1',
      [team.teamId],
    );
    expect(rows.map(({ d }) => d)).toEqual([
      ...['2011-12-26', '2011-12-27', '2011-12-28', '2011-12-29', '2011-12-31', '2012-01-01', '2012-01-02'],
    ]);
  });

  it('clocks set back by two hours, and the machine’s own set back by a day, double nothing', async () => {
    await clientsIn(
      `select name from zone where name in ('UTC', 'Antarctica/Troll', 'Europe/Berlin', 'America/Havana')`,
    );
    // Troll goes from UTC+2 to UTC+0 in one step.
    await playTicks('2026-10-24', '2026-10-27', 15);
    const before = await count();
    await playTicks('2026-10-25', '2026-10-27', 15);
    expect(await count()).toBe(before);
    expect(await faults(15)).toEqual([]);
  });
});

async function count(): Promise<number> {
  return (await db.query('select count(*)::int as n from night_client where team_id = $1', [team.teamId]))
    .rows[0].n;
}

/** The clients of the team: one in each zone, named after it, joined long before the ticks. */
async function clientsIn(zones: string, joined = '2020-01-01T00:00:00Z'): Promise<void> {
  await db.query('delete from client where team_id = $1', [team.teamId]);
  await db.query(
    `insert into client (team_id, id, coach_id, name, zone, standing, invited_at, joined_at)
     select $1, gen_random_uuid(), $2, name, name, 'in-training', $3, $3 from (${zones}) each`,
    [team.teamId, team.memberId, joined],
  );
}

/** Looks every so often and does what is owed, two nights back. A night that is owed twice breaks the ledger's key. */
async function playTicks(from: string, to: string, minutes: number, zones?: string): Promise<void> {
  await db.query(`do $$
    declare
      at timestamptz;
      ids uuid[] := ${zones ? `(select array_agg(id) from client where team_id = '${team.teamId}' and zone in (${zones}))` : 'null'};
    begin
      for at in select generate_series('${from}T00:00Z'::timestamptz, '${to}T00:00Z', interval '${minutes} minutes') loop
        insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
        select team_id, client_id, local_date, at, case when at = '${from}T00:00Z' then 'first look' else 'test' end, 1 from owed_nights_of(at, 2, '${team.teamId}', ids);
      end loop;
    end $$`);
}

/** Nights of dates that never were, nights before 03:00; but for what the first look found owed: gaps, late ones. */
async function faults(minutes = MINUTES): Promise<unknown[]> {
  const { rows } = await db.query(
    `with nights as (
       select c.zone, n.local_date as day, n.done_at, n.rules_version, lag(n.local_date) over own as before, lag(n.done_at) over own as done_before
       from night_client n join client c on c.team_id = n.team_id and c.id = n.client_id
       where n.team_id = $1 window own as (partition by c.id order by n.local_date)
     )
     select zone, day, done_at from nights
     where not local_date_exists(zone, day)
       or timezone(zone, done_at) < day + 1 + time '03:00'
       or (rules_version = 'test' and before is not null and done_at - done_before < interval '36 hours' and (
         timezone(zone, done_at - make_interval(mins => $2)) >= day + 1 + time '03:00'
         or exists (select from generate_series(0, day - before - 2) step, lateral (select before + 1 + step as d) gap where local_date_exists(zone, d))))
     limit 5`,
    [team.teamId, minutes],
  );
  return rows;
}
