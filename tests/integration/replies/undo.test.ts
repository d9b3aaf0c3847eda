import { randomUUID } from 'node:crypto';
import { beforeEach, expect, it } from 'vitest';
import { AppError } from '#lib/errors.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';
import { leadOf, NOW, openReason, waitingQuestion } from '../board/board-rows.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';

// Most questions wait with clients for whom no reason stands open: what is done there can be undone all the same.
let team: TestTeam;
let clientId: string;
const undo = (of: TestTeam, actId: string) =>
  undoAct(leadOf(of), { actId }, new Date(NOW.getTime() + 15_000));
const codeOf = (promise: Promise<unknown>) =>
  promise.then(
    () => 'done',
    (error) => (error instanceof AppError ? error.code : String(error)),
  );
const rows = (table: string) => ownerQuery(`select 1 from ${table} where team_id = $1`, [team.teamId]);

beforeEach(async () => {
  team = await makeTestTeam();
  ({ clientId } = await makeTestClient(team, { name: 'Maren Oduya' }));
});

it('an answer is taken back, its notice with it, once', async () => {
  await ownerQuery('update client set email = $2 where id = $1', [clientId, 'maren@client.example']);
  await ownerQuery('insert into client_notice (team_id, client_id, mail) values ($1, $2, true)', [
    team.teamId,
    clientId,
  ]);
  const questionId = await waitingQuestion(team, clientId);
  const { actId } = await answerQuestion(leadOf(team), { clientId, questionId, text: 'Bars.' }, NOW);
  expect([await rows('answer'), await rows('outbox')].map((found) => found.length)).toEqual([1, 1]);
  expect(await codeOf(undo(await makeTestTeam('Other'), actId))).toBe('not-found');
  expect(await undo(team, actId)).toEqual({ clientId });
  expect([await rows('answer'), await rows('outbox')].map((found) => found.length)).toEqual([0, 0]);
  const waits = await ownerQuery('select answered_at from question where id = $1', [questionId]);
  expect(waits).toEqual([{ answered_at: null }]);
  expect(await codeOf(undo(team, actId))).toBe('not-found');
});

it('"seen" is taken back, and a mark on one check-in or an unknown id is not touched', async () => {
  const { actId } = await markSeen(leadOf(team), { clientId }, NOW);
  expect(await codeOf(undo(team, randomUUID()))).toBe('not-found');
  expect(await rows('seen_mark')).toHaveLength(1);
  await undo(team, actId);
  expect(await rows('seen_mark')).toHaveLength(0);
});

it('an answer that closed a reason is undone by its own act only, so that the reason opens again', async () => {
  const questionId = await waitingQuestion(team, clientId);
  await openReason(team, clientId, 'question-waiting');
  const { actId } = await answerQuestion(leadOf(team), { clientId, questionId, text: 'Bars.' }, NOW);
  const [answer] = await ownerQuery<{ id: string }>('select id from answer where team_id = $1', [
    team.teamId,
  ]);
  expect(actId).not.toBe(answer?.id);
  expect(await codeOf(undo(team, answer?.id ?? ''))).toBe('not-found');
  expect(await codeOf(undo(team, actId))).toBe('done');
});
