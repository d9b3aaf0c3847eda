import pg from 'pg';
import { beforeAll, describe, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { listAnswersLike } from '#lib/db/earlier-answers.ts';
import { findAnswers } from '#lib/usecases/find-answers.ts';
import { leadOf, NOW } from '../board/board-rows.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { answered, asks } from './arrange.ts';

let team: TestTeam;
let other: TestTeam;
let clientId: string;
const found = async (words: string, of = team) =>
  (await findAnswers(leadOf(of), words, NOW)).map((answer) => answer.text);

beforeAll(async () => {
  team = await makeTestTeam('Low Wall');
  other = await makeTestTeam('High Wall');
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
  const theirs = await makeTestClient(other, { name: 'Theirs' });
  await answered(team, clientId, {
    asked: 'My wrist hurt a little after the floor. Go on?',
    told: 'Use the bars until Friday.',
  });
  await answered(team, clientId, {
    asked: 'How long should I rest between holds?',
    told: 'Two minutes; three after the pulls.',
  });
  await answered(team, clientId, {
    asked: 'Straps or no straps?',
    told: 'Without: your wrists have to learn it.',
    at: '2026-11-21T09:00:00Z',
  });
  await answered(other, theirs.clientId, { asked: 'My wrist hurts.', told: 'An answer of another team.' });
});

describe('earlier answers by words', () => {
  it.each([
    ['wrists hurting', ['Use the bars until Friday.']],
    ['wrist', ['Use the bars until Friday.', 'Without: your wrists have to learn it.']],
    ['holding resting', ['Two minutes; three after the pulls.']],
    ['bars floors', ['Use the bars until Friday.']], // one word in the answer, one in the question
    ['wrist -straps', ['Use the bars until Friday.']],
    ['"rest between holds"', ['Two minutes; three after the pulls.']],
    ['"holds between rest"', []],
    ['planche', []],
    ['the of and', []],
    ["'; drop table answer; --", []],
  ])('%s', async (words, texts) => {
    expect(await found(words)).toEqual(texts);
  });

  it('stays in its team, and says whose question it was', async () => {
    expect(await found('wrists hurting', other)).toEqual(['An answer of another team.']);
    expect((await findAnswers(leadOf(team), 'straps', NOW))[0]).toMatchObject({
      question: 'Straps or no straps?',
      who: 'Lead of Low Wall to Maren Oduya, Sat 21 Nov',
    });
  });
});

describe('answers like what a question asks', () => {
  it('share two words of it, the closest first; the only word where it has but one', async () => {
    const hurt = await asks(team, clientId, {
      text: 'Both wrists hurting again after floor work, what now?',
    });
    const short = await asks(team, clientId, { text: 'Straps?' });
    const none = await asks(team, clientId, { text: 'When do we speak about the camp in spring?' });
    const like = await withTeamPg(team.scope, (tx) => listAnswersLike(tx, [hurt, short, none], 3));
    expect(like.get(hurt)?.map((answer) => answer.text)).toEqual(['Use the bars until Friday.']);
    expect(like.get(short)?.map((answer) => answer.text)).toEqual(['Without: your wrists have to learn it.']);
    expect(like.get(none)).toBeUndefined();
  });
});

/** The plan as the owner, in the team, as the function runs it. */
async function planOf(sql: string): Promise<string> {
  const client = new pg.Client({ connectionString: process.env.DATABASE_URL });
  await client.connect();
  try {
    await client.query("select set_config('app.team_id', $1, false)", [team.teamId]);
    const { rows } = await client.query<{ 'QUERY PLAN': string }>(`explain ${sql}`);
    return rows.map((line) => line['QUERY PLAN']).join('\n');
  } finally {
    await client.end();
  }
}

it('an index answers it where there are many', async () => {
  await ownerQuery(
    `insert into question (team_id, client_id, text, asked_at, answered_at)
     select $1, $2, 'Question ' || n || ' about day ' || n % 7 || ' of the plan', now(), now() from generate_series(1, 6000) n`,
    [team.teamId, clientId],
  );
  await ownerQuery(
    `insert into answer (team_id, question_id, by_id, text) select $1, id, $2, 'Answer to: ' || text from question
     where team_id = $1 and text like 'Question %'`,
    [team.teamId, team.memberId],
  );
  await ownerQuery('vacuum analyze question, answer');
  const [body] = await ownerQuery<{ sql: string }>(
    `select prosrc as sql from pg_proc where proname = 'earlier_answers'`,
  );
  const sql = (body?.sql ?? '')
    .replaceAll('wanted', "'wrists hurting'")
    .replaceAll('any_word', 'false')
    .replace(/\bmost\b/, '12');
  const plan = await planOf(sql);
  expect(plan).toContain('Bitmap Index Scan on question_stems');
  expect(plan).toContain('Bitmap Index Scan on answer_stems');
  const before = performance.now();
  expect(await found('wrists hurting')).toEqual(['Use the bars until Friday.']);
  expect(performance.now() - before).toBeLessThan(500);
});
