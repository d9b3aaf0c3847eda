import { defineRoute } from '#lib/edge/define-route.ts';
import { boardAct } from '#lib/schemas/board.ts';
import { actOnReason } from '#lib/usecases/act-on-reason.ts';
import { answerQuestion } from '#lib/usecases/answer-question.ts';
import { markSeen } from '#lib/usecases/mark-seen.ts';
import { undoAct } from '#lib/usecases/undo-act.ts';

export const POST = defineRoute({ permission: 'act-on-reasons', body: boardAct }, ({ actor, body, now }) => {
  switch (body.act) {
    case 'answer':
      return answerQuestion(actor, body, now);
    case 'seen':
      return markSeen(actor, body, now);
    case 'undo':
      return undoAct(actor, body, now);
    default:
      return actOnReason(actor, body, now);
  }
});
