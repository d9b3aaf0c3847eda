import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { type BoardAct, boardAct } from '#lib/schemas/board.ts';
import { type ActDone, actOnReason } from '#lib/usecases/act-on-reason.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { putAsideMany } from '#lib/usecases/put-aside-many.ts';
import { actAsAssistant } from '#lib/usecases/team/act-as-assistant.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';

export const POST = defineRoute({ permission: 'prepare-acts', body: boardAct }, ({ actor, body, now }) => {
  if (!may(actor.role, 'act-on-reasons')) return prepared(actor, body, now);
  switch (body.act) {
    case 'answer':
      return told(actor, answerQuestion(actor, body, now));
    case 'seen':
      return markSeen(actor, body, now);
    case 'undo':
      return undoAct(actor, body, now);
    case 'put-aside-many':
      return putAsideMany(actor, body, now);
    case 'take':
      return told(actor, actOnReason(actor, body, now));
    default:
      return actOnReason(actor, body, now);
  }
});

/** Nobody waits for the queue: the notice is kept, and the tick finds what is left. */
async function told(actor: Actor, act: Promise<ActDone>): Promise<ActDone> {
  const done = await act;
  void kickNotices(actor.scope.teamId, done.actId);
  return done;
}

/** What waits for approval tells nobody yet. */
async function prepared(actor: Actor, body: BoardAct, now: Date) {
  const done = await actAsAssistant(actor, body, now);
  if ('actId' in done && !done.waits) void kickNotices(actor.scope.teamId, done.actId);
  return done;
}
