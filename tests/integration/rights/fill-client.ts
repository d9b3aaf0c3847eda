import { randomUUID } from 'node:crypto';
import { addStill } from '#lib/usecases/add-still.ts';
import { askQuestion } from '#lib/usecases/ask-question.ts';
import { submitCheckIn } from '#lib/usecases/submit-check-in.ts';
import { aPhoto } from '#tests/fixtures/pictures.ts';
import { aTraining, NOW, type Phone } from '../check-in/arrange.ts';
import { ownerQuery } from '../support/database.ts';

/** A text that stands nowhere else, to be looked for in every table. */
export const SEEDED = 'seeded-words-of-one-person';

/** Something of one client in every corner: check-ins and a correction, pictures, answers, a pyramid, mails, jobs to come. */
export async function fillClient(phone: Phone): Promise<{ stillId: string }> {
  const { clientId, team, actor } = phone;
  const first = aTraining(phone, {
    words: SEEDED,
    question: SEEDED,
    pain: [{ region: 'elbow-inner', side: 'right', moment: 'during', value: 7, kind: 'joint', usual: false }],
  });
  await submitCheckIn(actor, first, NOW);
  await submitCheckIn(actor, aTraining(phone, { correctsId: first.id, words: SEEDED }), NOW);
  const questionId = randomUUID();
  const stillId = randomUUID();
  await askQuestion(actor, { id: questionId, text: SEEDED }, NOW);
  await addStill(actor, { questionId, stillId, bytes: await aPhoto() }, NOW);
  const by = team.memberId;
  const run = (sql: string, ...more: unknown[]) => ownerQuery(sql, [team.teamId, clientId, ...more]);
  await run(
    `with q as (select id from question where team_id = $1 and client_id = $2 limit 1)
     insert into answer (team_id, question_id, by_id, text, created_at) select $1, q.id, $3, $4, $5 from q`,
    by,
    SEEDED,
    NOW,
  );
  await run(
    'insert into private_note (team_id, client_id, by_id, text, created_at) values ($1, $2, $3, $4, $5)',
    by,
    SEEDED,
    NOW,
  );
  await run(
    `insert into coach_word (team_id, client_id, by_id, check_in_id, set_id, text, created_at)
     select $1, $2, $3, s.check_in_id, s.id, $4, $5 from check_in_set s where s.team_id = $1 and s.client_id = $2`,
    by,
    SEEDED,
    NOW,
  );
  await run(
    `with made as (insert into plan (team_id, client_id, by_id, version, from_date, sessions_per_week, notes)
       values ($1, $2, $3, 1, '2026-11-01', 3, $4) returning id),
     named as (insert into plan_session (team_id, plan_id, label, position) select $1, id, 'A', 0 from made returning id)
     insert into plan_item (team_id, session_id, rung_id, side, position, sets, times_per_week)
     select $1, named.id, $5, 'both', p, 3, 3 from named, generate_series(0, 1) p`,
    by,
    SEEDED,
    phone.rungs.get('H3.4'),
  );
  await run(
    `update plan_item i set paired_with_id = (select o.id from plan_item o where o.session_id = i.session_id and o.id <> i.id)
     from plan_session s join plan p on p.id = s.plan_id where s.id = i.session_id and p.team_id = $1 and p.client_id = $2`,
  );
  await run(
    `insert into step_taken (team_id, client_id, reason_id, by_id, kind, words, taken_on)
     select $1, $2, r.id, $3, 'hold', $4, '2026-11-24' from reason r where r.team_id = $1 and r.client_id = $2`,
    by,
    SEEDED,
  );
  await run(
    `insert into guardian (team_id, client_id, name, user_id)
     select $1, $2, $3, u.id from (select id from "user" where email = $4) u`,
    SEEDED,
    await guardianEmail(),
  );
  await run(
    `insert into push_subscription (team_id, client_id, endpoint, p256dh, auth) select $1::uuid, c.id, 'https://push.example/' || c.id, 'k', 'a' from client c where c.id = $2`,
  );
  await run(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body) values ($1, 'mail', $2, 'to-the-client', $3)`,
    { to: 'them@client.example', subject: 'S', text: SEEDED },
  );
  await run(
    `insert into outbox (team_id, kind, client_id, dedupe_key, body, sent_at)
     select $1, 'mail', null, 'morning', jsonb_build_object('to', 'coach@team.example', 'subject', 'Morning', 'text',
       'Now:' || chr(10) || c.name || ': pain' || chr(10) || 'Somebody Else: pain'), now()
     from client c where c.team_id = $1 and c.id = $2`,
  );
  await run(
    `insert into audit (team_id, actor_role, action, client_id, fields, from_address)
     values ($1, 'client', 'signed-in', $2, '{}', '203.0.113.7')`,
  );
  return { stillId };
}

async function guardianEmail(): Promise<string> {
  const email = `${randomUUID()}@guardian.example`;
  await ownerQuery('insert into "user" (name, email) values ($1, $2)', [SEEDED, email]);
  return email;
}

/** Tables of the database, the queue's too, in which a text stands somewhere, with the number of rows. */
export async function tablesWith(text: string): Promise<Record<string, number>> {
  const tables = await ownerQuery<{ name: string }>(
    `select format('%I.%I', table_schema, table_name) as name from information_schema.tables
     where table_schema in ('public', 'bullmq') and table_type = 'BASE TABLE'`,
  );
  const each = tables.map(
    ({ name }) => `select '${name}' as name, count(*)::int as n from ${name} t where strpos(t::text, $1) > 0`,
  );
  const rows = await ownerQuery<{ name: string; n: number }>(each.join(' union all '), [text]);
  return Object.fromEntries(rows.filter(({ n }) => n > 0).map(({ name, n }) => [name, n]));
}
