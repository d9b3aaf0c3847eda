import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { insertTemplate } from '#lib/db/plan-templates.ts';
import { findRungs } from '#lib/db/plans.ts';
import { AppError } from '#lib/errors.ts';
import type { PlanTemplateInput } from '#lib/schemas/plan.ts';
import { planLinesBySide } from './plan-lines-by-side.ts';

/** Keeps a plan under a name for other clients of the team. A name that is taken is refused; nothing is replaced. */
export function keepPlanTemplate(
  actor: Actor,
  template: PlanTemplateInput,
  now: Date,
): Promise<{ templateId: string }> {
  return withTeamPg(actor.scope, async (tx) => {
    const { name, body } = template;
    const rungs = await findRungs(
      tx,
      body.items.flatMap((item) => [item.rungId, ...(item.noKitRungId ? [item.noKitRungId] : [])]),
    );
    planLinesBySide(body.items, rungs); // refuses what does not fit; a template keeps the lines as they were written
    const templateId = await insertTemplate(tx, { name, body, now });
    if (templateId === undefined) {
      const message = `“${name}” is the name of a kept plan already: choose another`;
      throw new AppError('conflict', message, { fields: { name: message } });
    }
    await insertAudit(tx, actor, { action: 'plan-template-kept', objectId: templateId, fields: [] });
    return { templateId };
  });
}
