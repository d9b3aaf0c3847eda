import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { deleteTemplate } from '#lib/db/plan-templates.ts';
import { AppError } from '#lib/errors.ts';

/** Deletes a kept plan for good. Plans of clients that were copied from it stay: a copy is a plan of its own. */
export function deletePlanTemplate(actor: Actor, templateId: string): Promise<void> {
  return withTeamPg(actor.scope, async (tx) => {
    if (!(await deleteTemplate(tx, templateId)))
      throw new AppError('not-found', 'This kept plan is not here any more. Read the page again.');
    await insertAudit(tx, actor, { action: 'plan-template-deleted', objectId: templateId, fields: [] });
  });
}
