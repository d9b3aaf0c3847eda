import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { countWaitingQuestions, insertAnswer } from '#lib/db/act-records.ts';
import { type ActEvent, findActClient, insertActEvents, lockOpenReasons, writeHolds } from '#lib/db/acts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import type { ActDone } from './act-on-reason.ts';
import { assertFilled } from './assert-filled.ts';
import { assertMember } from './assert-member.ts';
import { holdOf } from './hold-after-act.ts';
import { tellClient } from './tell-client.ts';

export type AnswerInput = {
  clientId: string;
  questionId: string;
  text: string;
  keptReplyId?: string | undefined;
};

/**
 * Answers a waiting question. Once none waits any more, the reason that a question waits closes too; the
 * client's other reasons stay where they are.
 */
export async function answerQuestion(actor: Actor, input: AnswerInput, now: Date): Promise<ActDone> {
  return withTeamPg(actor.scope, (tx) => answerQuestionIn(tx, actor, input, now));
}

/** The same inside a transaction that does more. */
export async function answerQuestionIn(
  tx: TeamPg,
  actor: Actor,
  input: AnswerInput,
  now: Date,
): Promise<ActDone> {
  const by = { memberId: assertMember(actor), at: now };
  if (!(await findActClient(tx, input.clientId)))
    throw new AppError('not-found', 'This is not there, or not in your team.');
  await assertFilled(tx, input);
  const open = await lockOpenReasons(tx, input.clientId);
  const answerId = await insertAnswer(tx, input, by);
  if (answerId === undefined)
    throw new AppError('conflict', 'This question does not wait any more. Read the board again.');
  const over = (await countWaitingQuestions(tx, input.clientId)) === 0;
  const closing = over ? open.filter((reason) => reason.kind === 'question-waiting') : [];
  // Where no reason stands open nothing can keep an event: then the answer itself is what an undo finds.
  const actId = open.length === 0 ? answerId : randomUUID();
  const { preparedById } = actor;
  const made = { answerId, questionId: input.questionId, ...(preparedById && { preparedById }) };
  const events: ActEvent[] = closing.map((reason) => {
    const before = holdOf(reason);
    const after = { ...before, state: 'closed', closedAt: now.toISOString(), closedWhy: 'answered' };
    return event(reason.id, { actId, clientId: input.clientId, before, after, ...made });
  });
  await writeHolds(
    tx,
    events.flatMap((one) => one.body.after ?? []),
    now,
  );
  const first = open[0];
  if (events.length === 0 && first) {
    events.push(event(first.id, { actId, clientId: input.clientId, before: null, after: null, ...made }));
  }
  await insertActEvents(tx, events, by);
  await tellClient(tx, { clientId: input.clientId, what: 'answer', id: answerId, by: actor.name }, now);
  await insertAudit(tx, actor, {
    action: 'question-answered',
    clientId: input.clientId,
    objectId: input.questionId,
    fields: [],
  });
  return { actId, line: `Answered: “${input.text}”`, folds: open.length === closing.length };
}

function event(reasonId: string, body: Omit<ActEvent['body'], 'act' | 'words'>): ActEvent {
  return { reasonId, what: 'answer', level: null, body: { ...body, act: 'answer', words: '' } };
}
