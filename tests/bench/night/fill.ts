import type pg from 'pg';
import { teamScope, withTeamPg } from '#lib/db/client.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { makeTeam } from '#lib/usecases/make-team.ts';
import { ID_OF_CLIENT, makeTemplates, type TemplateRows } from './templates.ts';

export const ZONE = 'Europe/Berlin';
const TEMPLATES = 100;
const LIBRARY = ['skill', 'part', 'ladder', 'drill', 'rung'];
/** Filled without their indexes, which are made afterwards. */
const LARGE = [
  'client',
  'check_in',
  'check_in_set',
  'pain_score',
  'day_rollup',
  'week_rollup',
  'night_client',
  'plan_item',
];

export type Filled = { clients: number; teamIds: string[]; days: number; checkIns: number; sets: number };

/**
 * Teams of clients with `days` days of check-ins, sets, pain, plans, placements, rollups and finished nights up to the
 * local date `until`, written by the database itself out of a hundred generated histories.
 */
export async function fill(
  db: pg.Client,
  { teams, clients, days, until }: { teams: number; clients: number; days: number; until: string },
): Promise<Filled> {
  const first = await makeTeam({
    name: 'Night',
    lead: {
      name: 'Lead',
      email: `lead-${days}@bench.example`,
      password: 'chalk-and-a-long-rope',
      zone: ZONE,
    },
  });
  const templates = makeTemplates(TEMPLATES, { days, until, rungs: await rungsOf(first.teamId) });
  await db.query(`set session_replication_role = replica; set synchronous_commit = off;
    set maintenance_work_mem = '512MB'; set work_mem = '64MB'; set allow_system_table_mods = on;
    create schema bench;
    create unlogged table bench.team (n int, id uuid, member uuid);
    create unlogged table bench.person (n int primary key, team_id uuid, id uuid, t int)`);
  await db.query('insert into bench.team values (0, $1, $2)', [first.teamId, first.memberId]);
  await writeTemplates(db, templates);
  await copyTeams(db, teams);
  await eachIndex(db, false);
  for (const statement of clientRows(clients, days, until)) await db.query(statement);
  await eachIndex(db, true);
  await db.query(`analyze plan, plan_session, plan_item; update plan p set packed = packed_plan(p)`);
  await db.query('set session_replication_role = origin');
  const { rows } = await db.query<{ ids: string[]; clients: number; checkIns: number; sets: number }>(
    `select (select array_agg(id::text order by n) from bench.team) as ids, (select count(*)::int from bench.person) as clients,
       (select count(*)::int from bench.check_in x join bench.person p on p.t = x.t) as "checkIns",
       (select count(*)::int from bench.set x join bench.person p on p.t = x.t) as sets`,
  );
  await db.query('drop schema bench cascade');
  await db.query('vacuum analyze');
  const [row] = rows;
  if (!row) throw new Error('nothing was filled');
  return { teamIds: row.ids, clients: row.clients, days, checkIns: row.checkIns, sets: row.sets };
}

async function rungsOf(teamId: string): Promise<Map<string, HistoryRung>> {
  return withTeamPg(teamScope(teamId), async (tx) => {
    const { rows } = await tx.client.query<{ id: string }>('select id from rung where team_id = $1', [
      teamId,
    ]);
    const rungs = await listHistoryRungs(
      tx,
      rows.map(({ id }) => id),
    );
    return new Map(rungs.flatMap((rung) => (rung.key === null ? [] : [[rung.key, rung] as const])));
  });
}

async function writeTemplates(db: pg.Client, rows: TemplateRows): Promise<void> {
  const write = async (table: string, columns: string, values: object[]) => {
    await db.query(`create unlogged table bench.${table} (${columns})`);
    for (let from = 0; from < values.length; from += 20_000) {
      const slice = JSON.stringify(values.slice(from, from + 20_000));
      await db.query(
        `insert into bench.${table} select * from jsonb_to_recordset($1::jsonb) as told(${columns})`,
        [slice],
      );
    }
    await db.query(`create index on bench.${table} (t); analyze bench.${table}`);
  };
  await write('day', 't int, date date, state text, load float8, pain int, count int, facts text', rows.days);
  await write(
    'check_in',
    't int, k int, id text, date date, "sentAt" timestamptz, kind text, session text, effort int, minutes int, ground text, "nothingHurts" boolean',
    rows.checkIns,
  );
  await write(
    'set',
    't int, k int, "rungId" uuid, side text, index int, planned float8, value float8, tried int, how text, clean boolean, faults text[]',
    rows.sets,
  );
  await write('pain', 't int, k int, region text, side text, moment text, value int, kind text', rows.pain);
  await write(
    'plan',
    't int, version int, "from" date, "sessionsPerWeek" int, "skillsInFocus" text[], items jsonb',
    rows.plans,
  );
  await write('placement', 't int, "rungId" uuid, "ladderId" uuid, side text, "from" date', rows.placements);
}

/** The other teams: a lead and the library of the first one, with the same ids, as keys lead with the team. */
async function copyTeams(db: pg.Client, teams: number): Promise<void> {
  await db.query(
    `insert into bench.team select n, gen_random_uuid(), gen_random_uuid() from generate_series(1, $1::int - 1) n`,
    [teams],
  );
  await db.query(`insert into team (id, name) select id, 'Night ' || n from bench.team where n > 0`);
  await db.query(`insert into member (team_id, id, user_id, role, name, email, zone)
    select b.id, b.member, m.user_id, 'lead', 'Lead', 'lead' || b.n || '@bench.example', m.zone
    from bench.team b, member m where b.n > 0 and m.team_id = (select id from bench.team where n = 0)`);
  for (const table of LIBRARY) {
    const { rows } = await db.query<{ columns: string }>(
      `select string_agg(format('%I', column_name), ', ') as columns from information_schema.columns
       where table_schema = 'public' and table_name = $1 and column_name <> 'team_id' and is_generated = 'NEVER'`,
      [table],
    );
    const columns = rows[0]?.columns ?? '';
    await db.query(`insert into ${table} (team_id, ${columns}) select b.id, ${columns.replace(/(^|, )/g, '$1x.')}
      from bench.team b, ${table} x where b.n > 0 and x.team_id = (select id from bench.team where n = 0)`);
  }
}

async function eachIndex(db: pg.Client, on: boolean): Promise<void> {
  if (on) for (const table of LARGE) await db.query(`reindex table ${table}`);
  else
    await db.query(
      `update pg_index set indisready = false, indisvalid = false where indrelid = any($1::regclass[])`,
      [LARGE.map((table) => `public.${table}`)],
    );
}

/** A check-in's id for a client, by the id of the template. */
const ID = (id: string) => `replace(${id}, '${ID_OF_CLIENT}', lpad(to_hex(p.n), 8, '0'))`;

function clientRows(clients: number, days: number, until: string): string[] {
  const day = `date '${until}'`;
  return [
    `insert into bench.person select g.n, b.id, gen_random_uuid(), g.n % ${TEMPLATES}
     from generate_series(0, ${clients - 1}) g(n) join bench.team b on b.n = g.n % (select count(*) from bench.team)`,
    `insert into client (team_id, id, coach_id, name, zone, standing, body_mass_kg, invited_at, joined_at)
     select p.team_id, p.id, b.member, 'Client ' || p.n, '${ZONE}', 'in-training', 70, ${day} - ${days}, ${day} - ${days - 1}
     from bench.person p join bench.team b on b.id = p.team_id`,
    `insert into check_in (team_id, id, client_id, body_hash, date, zone, sent_at, received_at, kind, session, effort, minutes, ground, nothing_hurts)
     select p.team_id, ${ID('x.id')}::uuid, p.id, 'made', x.date, '${ZONE}', x."sentAt", x."sentAt", x.kind, x.session, x.effort, x.minutes, x.ground, x."nothingHurts"
     from bench.check_in x join bench.person p on p.t = x.t order by x.date`,
    `insert into check_in_set (team_id, check_in_id, client_id, rung_id, side, idx, planned, value, tried, how, clean, faults)
     select p.team_id, ${ID('c.id')}::uuid, p.id, s."rungId", s.side, s.index, s.planned, s.value, s.tried, s.how, s.clean, s.faults
     from bench.set s join bench.check_in c on c.t = s.t and c.k = s.k join bench.person p on p.t = s.t order by c.date`,
    `insert into pain_score (team_id, check_in_id, client_id, region, side, moment, value, kind)
     select p.team_id, ${ID('c.id')}::uuid, p.id, x.region, x.side, x.moment, x.value, x.kind
     from bench.pain x join bench.check_in c on c.t = x.t and c.k = x.k join bench.person p on p.t = x.t`,
    `insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
     select p.team_id, p.id, x.date, x.state, x.load, x.pain, x.count, ${ID('x.facts')}
     from bench.day x join bench.person p on p.t = x.t order by x.date`,
    `insert into week_rollup (team_id, client_id, week, days)
     select p.team_id, p.id, x.week, ${ID('x.days')}
     from (select t, week_of(date) as week, string_agg(packed_day(date, facts), ',' order by date) as days
       from bench.day group by 1, 2) x
     join bench.person p on p.t = x.t order by x.week`,
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
     select p.team_id, p.id, x."ladderId", x."rungId", x.side, x."from" from bench.placement x join bench.person p on p.t = x.t
     on conflict do nothing`,
    `insert into plan (team_id, client_id, version, from_date, sessions_per_week, skills_in_focus, by_id)
     select p.team_id, p.id, x.version, x."from", x."sessionsPerWeek", x."skillsInFocus", b.member
     from bench.plan x join bench.person p on p.t = x.t join bench.team b on b.id = p.team_id`,
    `insert into plan_session (team_id, plan_id, label, position)
     select l.team_id, l.id, 'A', 1 from plan l join bench.person p on p.team_id = l.team_id and p.id = l.client_id`,
    `insert into plan_item (team_id, session_id, rung_id, side, position, sets, target, times_per_week)
     select s.team_id, s.id, i."rungId", i.side, i.place, i.sets, i.target, i."timesPerWeek"
     from plan_session s join plan l on l.team_id = s.team_id and l.id = s.plan_id
     join bench.person p on p.team_id = l.team_id and p.id = l.client_id join bench.plan x on x.t = p.t and x.version = l.version,
     rows from (jsonb_to_recordset(x.items) as ("rungId" uuid, side text, sets int, target float8, "timesPerWeek" float8))
       with ordinality as i("rungId", side, sets, target, "timesPerWeek", place)`,
    `insert into seen_mark (team_id, client_id, by_id, at)
     select p.team_id, p.id, b.member, ${day} - 7 * w + time '09:00' from bench.person p join bench.team b on b.id = p.team_id, generate_series(0, ${Math.floor(days / 7) - 1}) w`,
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
     select p.team_id, p.id, ${day} - d, ${day} - d + interval '27 hours', '1', 1 from generate_series(0, ${days - 1}) d, bench.person p`,
  ];
}
