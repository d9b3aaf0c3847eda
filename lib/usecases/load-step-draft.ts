import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { rowOf } from '#lib/checks/urgency.ts';
import { findActClient, listOpenReasons } from '#lib/db/acts.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { PlanDraftInput } from '#lib/schemas/plan-draft.ts';
import { draftToPlan } from '#lib/views/step-to-plan.ts';
import { type DraftSaved, savePlanDraftIn } from './save-plan-draft.ts';
import { stepDraftFor } from './step-draft-for.ts';

type Asked = { clientId: string; reasonId?: string | undefined };
/** What the act panel shows of a draft. `planVersion` goes back with the act. */
export type StepDraftShown = {
  reasonId: string;
  step: string;
  planVersion: number;
  does: string[];
  words: string;
  /** It can be opened in the plan editor first. */
  opensInPlan: boolean;
};

/** The draft of the step of one open reason, or of the one that leads the client's row; null: nothing to draft. */
export function loadStepDraft(actor: Actor, asked: Asked, now: Date): Promise<StepDraftShown | null> {
  return withTeamPg(actor.scope, async (tx) => {
    const found = await findDraft(tx, asked, now);
    if (!found) return null;
    const { draft, plan, planVersion, reason } = found;
    return {
      reasonId: reason.id,
      step: reason.step.text,
      planVersion,
      does: draft.does,
      words: draft.words,
      opensInPlan:
        may(actor.role, 'edit-plans') &&
        plan !== undefined &&
        draftToPlan(draft, plan.items, reason.id) !== undefined,
    };
  });
}

/** Keeps the draft for the plan editor, where a coach changes it before it is taken; answers with its address. */
export function openStepDraft(actor: Actor, asked: Asked, now: Date): Promise<DraftSaved> {
  return withTeamPg(actor.scope, async (tx) => {
    const found = await findDraft(tx, asked, now);
    const plan = found?.plan;
    const draft = plan && draftToPlan(found.draft, plan.items, found.reason.id);
    if (!draft)
      throw new AppError('conflict', 'This step changes nothing in the plan any more. Read the board again.');
    return savePlanDraftIn(tx, actor, { clientId: asked.clientId, draft: draft as PlanDraftInput }, now);
  });
}

async function findDraft(tx: TeamPg, { clientId, reasonId }: Asked, now: Date) {
  const client = await findActClient(tx, clientId);
  if (!client) throw new AppError('not-found', 'This is not there, or not in your team.');
  const open = await listOpenReasons(tx, clientId);
  const reasons = reasonId ? open.filter((reason) => reason.id === reasonId) : open;
  const reason = reasons[rowOf(reasons).lead];
  if (!reason) return undefined;
  const found = await stepDraftFor(tx, { clientId, reason, today: localDateOf(now, client.zone) });
  return found && { ...found, reason };
}
