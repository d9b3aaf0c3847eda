import type { Actor } from '#lib/auth/actor.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertPlanDraft } from '#lib/db/plan-drafts.ts';
import { findRungs, lockPlanVersion } from '#lib/db/plans.ts';
import { AppError } from '#lib/errors.ts';
import { type PlanDraftInput, planDraftSchema } from '#lib/schemas/plan-draft.ts';
import type { PlanDraft } from '#lib/views/plan-draft.ts';

export type DraftSaved = { draftId: string; address: string };

/** Keeps a draft of a plan for a coach to open at `address`; nothing of the plan changes yet. */
export function savePlanDraft(
  actor: Actor,
  input: { clientId: string; draft: PlanDraftInput },
  now: Date,
): Promise<DraftSaved> {
  return withTeamPg(actor.scope, (tx) => savePlanDraftIn(tx, actor, input, now));
}

/** The same inside a transaction that does more. */
export async function savePlanDraftIn(
  tx: TeamPg,
  actor: Actor,
  { clientId, draft: input }: { clientId: string; draft: PlanDraftInput },
  now: Date,
): Promise<DraftSaved> {
  if (!actor.memberId) throw new AppError('forbidden', 'Only a coach proposes a plan.');
  const draft = parse(input);
  if ((await lockPlanVersion(tx, clientId)) === undefined)
    throw new AppError('not-found', 'This client is not here.');
  await assertRungs(tx, draft);
  const draftId = await insertPlanDraft(tx, { clientId, byId: actor.memberId, draft, now });
  return { draftId, address: `/clients/${clientId}/plan?draft=${draftId}` };
}

function parse(input: PlanDraftInput): PlanDraft {
  const read = planDraftSchema.safeParse(input);
  if (read.success) return read.data;
  const fields = Object.fromEntries(read.error.issues.map((one) => [one.path.join('.'), one.message]));
  const [first] = Object.entries(fields);
  throw new AppError('invalid', first ? `${first[0]}: ${first[1]}` : 'This is not a draft of a plan.', {
    fields,
    cause: read.error,
  });
}

async function assertRungs(tx: TeamPg, draft: PlanDraft): Promise<void> {
  const known = await findRungs(
    tx,
    draft.lines.map((line) => line.rungId),
  );
  for (const [index, line] of draft.lines.entries()) {
    const rung = known.get(line.rungId);
    const refuse = (field: string, message: string) => {
      throw new AppError('invalid', `lines.${index}.${field}: ${message}`, {
        fields: { [`lines.${index}.${field}`]: message },
      });
    };
    if (!rung) refuse('rungId', 'is not a rung of your ladders: choose one from the list');
    else if (!rung.eachSide && line.side !== 'both')
      refuse('side', `"${rung.name}" is done with both sides together: choose both`);
  }
}
