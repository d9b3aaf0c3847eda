import type pg from 'pg';

export type Filled = {
  teamId: string;
  memberId: string;
  clientId: string;
  emptyId: string;
  checkIns: number;
  sets: number;
};

/**
 * Two clients of a team found by its name, written by the database itself: one with nothing, one with `years` of four
 * sessions a week, 16 sets and 2 scores each, a plan every eight weeks, 30 reasons and 40 questions a year. Invented.
 */
export async function fillClient(
  db: pg.Client,
  { name, years }: { name: string; years: number },
): Promise<Filled> {
  const { rows: teams } = await db.query<{ teamId: string; memberId: string }>(
    'select t.id as "teamId", m.id as "memberId" from team t join member m on m.team_id = t.id where t.name = $1',
    [name],
  );
  const [team] = teams;
  if (!team) throw new Error('there is no team to fill');
  const make = async (called: string) =>
    (
      await db.query<{ id: string }>(
        `insert into client (team_id, coach_id, name, zone, standing, invited_at, joined_at)
         values ($1, $2, $3, 'Europe/Berlin', 'in-training', now() - interval '11 years', now() - interval '11 years') returning id`,
        [team.teamId, team.memberId, called],
      )
    ).rows[0]?.id ?? '';
  const [emptyId, clientId] = [await make('Nobody Yet'), await make('Ten Years')];
  const run = (sql: string, ...values: unknown[]) => db.query(sql, [team.teamId, clientId, ...values]);
  const days = Math.round(years * 365);
  await run(
    `insert into check_in (team_id, client_id, body_hash, date, zone, sent_at, kind, session, effort, minutes, words)
     select $1, $2, 'x', current_date - d, 'Europe/Berlin', (current_date - d) + time '18:40', 'training', 'A', 5 + d % 4, 50 + d % 20,
       case when d % 5 = 0 then 'The third set was shaky, the rest as always. ' || d else '' end
     from generate_series(1, $3::int) d where d % 7 in (0, 2, 4, 5)`,
    days,
  );
  await run(
    `insert into check_in_set (team_id, client_id, check_in_id, rung_id, side, idx, planned, value, how, faults)
     select $1, $2, c.id, r.id, 'both', i, 8, 4 + (i + extract(doy from c.date)::int) % 6, 'typed', '{}'
     from check_in c, (select id from rung where team_id = $1 order by id limit 4) r, generate_series(1, 4) i
     where c.team_id = $1 and c.client_id = $2`,
  );
  await run(
    `insert into pain_score (team_id, client_id, check_in_id, region, side, moment, value, kind)
     select $1, $2, c.id, p.region, 'right', p.moment, extract(doy from c.date)::int % 4, 'joint'
     from check_in c, (values ('elbow-inner', 'during'), ('wrist-back', 'after')) p(region, moment)
     where c.team_id = $1 and c.client_id = $2`,
  );
  await run(
    `insert into plan (team_id, client_id, by_id, version, from_date, sessions_per_week, why)
     select $1, $2, $3, v, current_date - $4::int + v * 56, 4, 'Goes on' from generate_series(1, greatest(1, $4::int / 56)) v`,
    team.memberId,
    days,
  );
  await run(
    `insert into question (team_id, client_id, text, asked_at)
     select $1, $2, 'How do I keep the elbows in when it gets late? ' || q, now() - q * interval '9 days' from generate_series(1, $3::int) q`,
    Math.round(years * 40),
  );
  await run(
    `insert into reason (team_id, client_id, kind, subject_key, subject, level, points, tier, sentence, short, since, step, clears,
       evidence, working, state, rules_version, settings_version, raised_at, updated_at, closed_at, closed_why)
     select $1, $2, 'pain-rising', 'elbow-' || n, '{"key":"elbow","label":"right elbow"}', 'act', 60, 'today', 'Right elbow **4** of 10.', 'elbow up',
       current_date - n * 12, '{"kind":"cut-volume","text":"Cut the pulling"}', 'two calm days', '{}', '{}', 'closed', '1', 0,
       now() - n * interval '12 days', now(), now() - n * interval '12 days' + interval '5 days', '2 clear nights'
     from generate_series(1, $3::int) n`,
    Math.round(years * 30),
  );
  await db.query('analyze');
  const { rows } = await run(
    `select (select count(*)::int from check_in where team_id = $1 and client_id = $2) as "checkIns",
       (select count(*)::int from check_in_set where team_id = $1 and client_id = $2) as sets`,
  );
  return { ...team, clientId, emptyId, ...(rows[0] as { checkIns: number; sets: number }) };
}
