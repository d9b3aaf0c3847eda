import { randomUUID } from 'node:crypto';
import { beforeEach, expect, it } from 'vitest';
import { withTeamPg } from '#lib/db/client.ts';
import { listKeptReplies } from '#lib/db/kept-replies.ts';
import { AppError } from '#lib/errors.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { keepReply } from '#lib/usecases/keep-reply.ts';
import { retireReply } from '#lib/usecases/retire-reply.ts';
import { leadOf, NOW } from '../board/board-rows.ts';
import { makeTestClient, makeTestTeam, ownerQuery, type TestTeam } from '../support/database.ts';
import { answered, asks } from './arrange.ts';

let team: TestTeam;
let clientId: string;
beforeEach(async () => {
  team = await makeTestTeam();
  ({ clientId } = await makeTestClient(team));
});
const refusal = (promise: Promise<unknown>): Promise<AppError> =>
  promise.then(
    () => expect.fail('was not refused'),
    (error: unknown) => (error instanceof AppError ? error : expect.fail(String(error))),
  );
const STAY = { name: 'Stay on a rung', text: 'Stay on [rung] until [date], then write to me.' };
const list = () => withTeamPg(team.scope, listKeptReplies);

it('an answer from a kept reply is refused with its open fields by name, and nothing is written', async () => {
  const { id } = await keepReply(leadOf(team), STAY, NOW);
  const questionId = await asks(team, clientId, { text: 'Go up?' });
  const send = (text: string, keptReplyId?: string) =>
    answerQuestion(leadOf(team), { clientId, questionId, text, keptReplyId }, NOW);
  const refused = await refusal(send('Stay on tuck until [date].', id));
  expect([refused.code, refused.fields]).toEqual([
    'invalid',
    { text: '[date] is not filled in yet: write over it, or take the square brackets away' },
  ]);
  expect((await refusal(send(STAY.text, id))).fields.text).toContain('[rung] and [date] are not');
  expect((await refusal(send('Stay.', randomUUID()))).code).toBe('not-found');
  expect(await ownerQuery('select 1 from answer where team_id = $1', [team.teamId])).toEqual([]);
  await send('Stay on tuck until Friday.', id);
});

it('a text of the coach’s own may have brackets', async () => {
  const questionId = await asks(team, clientId, { text: 'Go up?' });
  await answerQuestion(leadOf(team), { clientId, questionId, text: 'No [see the plan].' }, NOW);
});

it('is kept, changed, retired and taken back; a name is one in the team while it is in use', async () => {
  const { id } = await keepReply(leadOf(team), STAY, NOW);
  expect((await refusal(keepReply(leadOf(team), { ...STAY, name: 'stay ON a rung' }, NOW))).fields).toEqual({
    name: 'another kept reply is called “stay ON a rung”: choose another name, or change that one',
  });
  await keepReply(leadOf(team), { ...STAY, id, text: 'Stay on [rung].' }, NOW);
  expect(await list()).toMatchObject([{ id, name: STAY.name, text: 'Stay on [rung].', retiredAt: null }]);

  await retireReply(leadOf(team), { replyId: id, retired: true }, NOW);
  expect(await list()).toMatchObject([{ id, retiredAt: NOW }]);
  const { id: second } = await keepReply(leadOf(team), STAY, NOW);
  expect((await refusal(retireReply(leadOf(team), { replyId: id, retired: false }, NOW))).code).toBe(
    'conflict',
  );
  await retireReply(leadOf(team), { replyId: second, retired: true }, NOW);
  await retireReply(leadOf(team), { replyId: id, retired: false }, NOW);
  expect((await list()).map((reply) => [reply.id, reply.retiredAt !== null])).toEqual([
    [id, false],
    [second, true],
  ]);
});

it('stays in its team, and an answer that was kept knows it', async () => {
  const { id } = await keepReply(leadOf(team), STAY, NOW);
  const stranger = leadOf(await makeTestTeam('Other'));
  expect((await refusal(keepReply(stranger, { ...STAY, id }, NOW))).code).toBe('not-found');
  expect((await refusal(retireReply(stranger, { replyId: id, retired: true }, NOW))).code).toBe('not-found');
  const answerId = await answered(team, clientId, { asked: 'Up?', told: 'Stay.' });
  await keepReply(leadOf(team), { name: 'From an answer', text: 'Stay.', answerId }, NOW);
  expect(await ownerQuery('select kept_for_reuse as kept from answer where id = $1', [answerId])).toEqual([
    { kept: true },
  ]);
});
