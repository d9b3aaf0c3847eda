import { z } from 'zod';
import { defineRoute } from '#lib/edge/define-route.ts';
import { templateAddress } from '#lib/schemas/plan-address.ts';
import { deletePlanTemplate } from '#lib/usecases/delete-plan-template.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', params: templateAddress, body: z.strictObject({}) },
  ({ actor, params }) => deletePlanTemplate(actor, params.templateId),
);
