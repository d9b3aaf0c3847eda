import type { Actor } from '#lib/auth/actor.ts';
import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { boardAct } from '#lib/schemas/board.ts';
import { type ActDone, actOnReason } from '#lib/usecases/act-on-reason.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { putAsideMany } from '#lib/usecases/put-aside-many.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';

export const POST = defineRoute({ permission: 'act-on-reasons', body: boardAct }, ({ actor, body, now }) => {
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
