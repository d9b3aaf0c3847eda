import type pg from 'pg';

// An invented Monday of a large team, written by the database itself: of every 120 clients some ten have a true alert,
// 25 asked something, 25 wait for a film to be seen, 30 have a plan that ends this week (common practice, no source).
const FIRST = ['Solveig', 'Imre', 'Nadia', 'Tomasz', 'Aiko', 'Bram', 'Ximena', 'Olu', 'Petra', 'Yusuf'];
const LAST = [
  'Aune',
  'Balint',
  'Coelho',
  'Dembele',
  'Eklund',
  'Ferrant',
  'Gruber',
  'Hadjiev',
  'Ibarra',
  'Joubert',
];

export type Filled = { teamId: string; clients: number; rows: number };

/** Fills a team, found by its name, with clients, 12 weeks of days, the last check-ins, one night and open reasons. */
export async function fillTeam(
  db: pg.Client,
  { name, clients, today }: { name: string; clients: number; today: string },
): Promise<Filled> {
  const run = (sql: string, values: unknown[] = []) => db.query(sql, values);
  const { rows: teams } = await db.query<{ id: string; member: string }>(
    'select t.id, m.id as member from team t join member m on m.team_id = t.id where t.name = $1',
    [name],
  );
  const [team] = teams;
  if (!team) throw new Error('there is no team to fill: make one first');
  await run('begin');
  await run(
    `insert into client (team_id, coach_id, name, zone, standing, invited_at, joined_at)
     select $1, $2, ($3::text[])[1 + i % 10] || ' ' || ($4::text[])[1 + (i / 10) % 10] || ' ' || to_char(i, 'FM0000'),
       'Europe/Berlin', 'in-training', $6::date - 300, $6::date - case when i % 40 = 7 then i % 28 else 290 end
     from generate_series(1, $5::int) i`,
    [team.id, team.member, FIRST, LAST, clients, today],
  );
  await run(
    `create temp table person as select id, row_number() over (order by name) as i from client where team_id = $1`,
    [team.id],
  );
  await run(
    `insert into day_rollup (team_id, client_id, date, state, session_load_au, worst_pain, check_ins, facts)
     select $1, p.id, $2::date - d, case when (p.i + d) % 7 = 3 then 'rest' else 'trained' end,
       case when (p.i + d) % 7 = 3 then 0 else 240 + (p.i * 37 + d * 53) % 160 + case when d < 8 and p.i % 9 = 0 then 260 else 0 end end,
       case when p.i % 6 = 0 and d < 12 then 3 + (p.i + d) % 4 else (p.i + d) % 3 end, 1, '[]'
     from person p, generate_series(1, 84) d where (p.i + d) % 7 in (0, 2, 3, 5) and (p.i % 40 <> 8 or d <= p.i % 28)`,
    [team.id, today],
  );
  await run(
    `insert into check_in (team_id, client_id, body_hash, date, zone, sent_at, kind)
     select $1, r.client_id, 'made', r.date, 'Europe/Berlin', r.date + time '18:40', 'training'
     from day_rollup r where r.team_id = $1 and r.date >= $2::date - 28`,
    [team.id, today],
  );
  await run(
    `insert into placement (team_id, client_id, ladder_id, rung_id, side, from_date)
     select $1, p.id, l.id, r.id, 'both', $2::date - case when r.position = 2 then 200 else 20 + (p.i % 50)::int end
     from person p
     join lateral (select id from ladder where team_id = $1 order by name, id offset p.i % 12 limit 1) l on true
     join rung r on r.team_id = $1 and r.ladder_id = l.id and r.position in (2, 3)`,
    [team.id, today],
  );
  await run(
    `insert into night_run (team_id, local_date, started_at, finished_at, clients_due, clients_done, clients_failed, rules_version)
     values ($1, $2::date - 1, $2::date + time '03:00', $2::date + time '03:12', $3, $3, 0, '1')`,
    [team.id, today, clients],
  );
  await run(
    `insert into night_client (team_id, client_id, local_date, done_at, rules_version, attempts)
     select $1, id, $2::date - d, $2::date - d + time '03:10', '1', 1 from person, generate_series(1, 15) d`,
    [team.id, today],
  );
  await run(
    `insert into question (team_id, client_id, text, asked_at)
     select $1, id, 'Should I keep the bars for the pull, or go back to the floor?', $2::date - (2 + i % 3)::int * interval '1 day'
     from person where i % 24 < 5`,
    [team.id, today],
  );
  for (const reason of REASONS)
    await run(insertReasons(reason.where), [team.id, today, JSON.stringify(reason)]);
  const { rows } = await db.query<{ n: number }>(
    `select count(distinct client_id)::int as n from reason where team_id = $1 and closed_at is null`,
    [team.id],
  );
  await run('commit');
  await run('analyze');
  return { teamId: team.id, clients, rows: rows[0]?.n ?? 0 };
}

type Made = {
  kind: string;
  tier: string;
  level: string;
  points: number;
  sentence: string;
  short: string;
  step: { kind: string; text: string };
  /** Of which clients, by their number `i`. */
  where: string;
};

const REASONS: Made[] = [
  {
    kind: 'pain-high',
    tier: 'now',
    level: 'act',
    points: 3,
    sentence: 'Right elbow, inner **6 of 10** on Sunday, up from 2.',
    short: 'right elbow 6',
    step: { kind: 'send-to-clinician', text: 'Stop all pulling; send to a clinician.' },
    where: 'i % 120 = 11',
  },
  {
    kind: 'question-waiting',
    tier: 'today',
    level: 'act',
    points: 2,
    sentence: 'Waiting **51 hours**: “Should I keep the bars for the pull?”',
    short: 'question 51 hours',
    step: { kind: 'answer', text: 'Answer.' },
    where: 'i % 24 < 5',
  },
  {
    kind: 'film-waiting',
    tier: 'this-week',
    level: 'watch',
    points: 1,
    sentence: 'A film waits **30 hours** to be seen.',
    short: 'film 30 hours',
    step: { kind: 'look', text: 'Look at the film.' },
    where: 'i % 24 in (7, 8, 9, 10, 11)',
  },
  {
    kind: 'plan-ending',
    tier: 'this-week',
    level: 'watch',
    points: 1,
    sentence: 'The plan ends in **5 days**.',
    short: 'plan ends in 5 days',
    step: { kind: 'new-plan', text: 'Write the next four weeks.' },
    where: 'i % 4 = 0',
  },
  {
    kind: 'stalled',
    tier: 'this-week',
    level: 'act',
    points: 2,
    sentence: 'Toe pull 3 x 10 s for **52 days**, usual 24.',
    short: 'toe pull 52 days',
    step: { kind: 'one-rung-back', text: 'One rung back for three weeks.' },
    where: 'i % 30 = 5',
  },
  {
    kind: 'step-up-earned',
    tier: 'good-news',
    level: 'watch',
    points: 0,
    sentence: 'Free hold **20 s** passed on Friday and Sunday, clean.',
    short: 'step up earned',
    step: { kind: 'step-up', text: 'Step up to 30 s, with 20 s beside it.' },
    where: 'i % 20 = 13',
  },
];

/** $3 is the reason; the clients by `where`, raised over the last days. */
function insertReasons(where: string): string {
  return `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since,
      step, clears, evidence, working, rules_version, raised_at, updated_at)
    select $1, p.id, r->>'kind', 'made', '{"key":"made","label":""}', r->>'level', (r->>'points')::int, r->>'tier',
      r->>'sentence', r->>'short', $2::date - (1 + i % 9)::int, r->'step', 'two clear nights', '{}',
      '{"daysKnown":{"known":26,"of":28}}', '1', $2::date - (i % 9)::int + time '02:00', $2::date + time '02:00'
    from person p, (select $3::jsonb as r) made where ${where}`;
}
