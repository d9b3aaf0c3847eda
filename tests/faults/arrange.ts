import { addDays } from '#lib/domain/local-date.ts';
import { closeDatabase } from '#lib/usecases/close-database.ts';
import { draws } from '#tests/bench/detect/random.ts';
import { makeRung, trainingClient } from '#tests/integration/night/arrange.ts';
import { makeTestTeam, ownerQuery } from '#tests/integration/support/database.ts';
import { NIGHT } from './night.ts';

// A program: fills the database named by DATABASE_URL with one team of FAULT_CLIENTS clients, whose nights before
// NIGHT are finished. A few clients are made through the product, the others are copies of them under other names.
const HISTORY_DAYS = 35;
const MADE = 12;
/** UTC+14, UTC-11, and two that change their clocks; every other client lives by UTC. */
const ZONES = ['Pacific/Kiritimati', 'Pacific/Pago_Pago', 'America/Santiago', 'Australia/Lord_Howe'];

const clients = Number(process.env.FAULT_CLIENTS);
const draw = draws(Number(process.env.FAULT_SEED));
const team = await makeTestTeam('Faults');
const rungId = await makeRung(team);
const from = addDays(NIGHT, -HISTORY_DAYS);
const made: string[] = [];
for (let at = 0; at < Math.min(MADE, clients); at += 1) {
  const to = draw.chance(0.25) ? addDays(NIGHT, -draw.int(5, 21)) : NIGHT;
  const pain: Record<string, number> = {};
  for (let date = from; date <= to; date = addDays(date, 2))
    if (draw.chance(at % 3 === 0 ? 0.5 : 0.1)) pain[date] = draw.int(1, 8);
  made.push(await trainingClient(team, { rungId, from, to, pain, name: `Client ${at}` }));
}
await copies();
await ownerQuery(`update member set morning_mail = 'off' where team_id = $1`, [team.teamId]);
await ownerQuery(
  `update client set zone = ($2::text[])[place] from (
     select id, row_number() over (order by name) % 10 as place from client where team_id = $1) each
   where client.id = each.id and place between 1 and 4`,
  [team.teamId, ZONES],
);
// Numbers of their own, so that the ledger names a version of the settings.
await ownerQuery(
  `insert into team_settings (team_id, version, values, by_id, why) values ($1, 1, '{"goneQuiet.watchDays": 6}', $2, 'test')`,
  [team.teamId, team.memberId],
);
await ownerQuery(
  `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts, settings_version)
   select team_id, id, day::date, day + interval '27 hours', 'earlier', 1, 1
   from client, generate_series($2::date - 20, $2::date - 1, interval '1 day') day where team_id = $1`,
  [team.teamId, NIGHT],
);
await ownerQuery('analyze');
await closeDatabase();

/** Client 24 is Client 0 under another name and id, and so on. */
async function copies(): Promise<void> {
  const of =
    '(select id, row_number() over (order by array_position($2::uuid[], id)) - 1 as place from client where team_id = $1)';
  const numbers = `${of} made cross join lateral
    generate_series($3::int + made.place::int, $4::int - 1, $3::int) as copy(number)`;
  const values = [team.teamId, made, made.length, clients];
  // Ids as the product makes them: version 4.
  const renamed = (id: string) =>
    `overlay(overlay(md5(${id}::text || copy.number) placing '4' from 13) placing '8' from 17)::uuid`;
  await ownerQuery(
    `insert into "user" (id, name, email) select ${renamed('u.id')}, u.name, copy.number || u.email
     from ${numbers} join client c on c.id = made.id join "user" u on u.id = c.user_id`,
    values,
  );
  for (const [table, changes] of [
    [
      'client',
      `'user_id', ${renamed('t.user_id')}, 'name', 'Client ' || copy.number, 'id', ${renamed('t.id')}`,
    ],
    ['check_in', `'id', ${renamed('t.id')}, 'client_id', ${renamed('t.client_id')}`],
    ['consent', `'id', gen_random_uuid(), 'client_id', ${renamed('t.client_id')}`],
    ['day_rollup', `'client_id', ${renamed('t.client_id')}`],
  ] as const) {
    const owner = table === 'client' ? 't.id' : 't.client_id';
    await ownerQuery(
      `insert into ${table} select (jsonb_populate_record(null::${table}, to_jsonb(t) || jsonb_build_object(${changes}))).*
       from ${numbers} join ${table} t on t.team_id = $1 and ${owner} = made.id`,
      values,
    );
  }
  // Somebody who is fine was looked at; ids of the rows do not matter.
  await ownerQuery(
    `insert into seen_mark (team_id, id, client_id, by_id, at)
     select $1, gen_random_uuid(), id, $2, $3::date - 2 from client where team_id = $1 and right(name, 1) in ('0', '5')`,
    [team.teamId, team.memberId, NIGHT],
  );
}
