import { defineRoute } from '#lib/edge/define-route.ts';
import { planTemplateSchema } from '#lib/schemas/plan.ts';
import { keepPlanTemplate } from '#lib/usecases/keep-plan-template.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', body: planTemplateSchema },
  async ({ actor, body, now }) => Response.json(await keepPlanTemplate(actor, body, now), { status: 201 }),
);
