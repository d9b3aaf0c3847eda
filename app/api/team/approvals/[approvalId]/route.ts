import { defineRoute } from '#lib/edge/define-route.ts';
import { kickNotices } from '#lib/jobs/queue.ts';
import { approvalAddress, approvalDecision } from '#lib/schemas/team.ts';
import { approveAct, sendBackAct } from '#lib/usecases/team/decide-approval.ts';
import { undoApproval } from '#lib/usecases/team/undo-approval.ts';

export const POST = defineRoute(
  { permission: 'approve-acts', params: approvalAddress, body: approvalDecision },
  async ({ actor, params, body, now }) => {
    if (body.decision === 'undo') return undoApproval(actor, params.approvalId, now);
    if (body.decision === 'send-back') return sendBackAct(actor, { ...params, words: body.words }, now);
    const done = await approveAct(actor, { ...params, body: body.body }, now);
    if (done.actId) void kickNotices(actor.scope.teamId, done.actId);
    return done;
  },
);
