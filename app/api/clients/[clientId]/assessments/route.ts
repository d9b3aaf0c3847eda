import { defineRoute } from '#lib/edge/define-route.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { saveAssessment } from '#lib/usecases/save-assessment.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', params: clientAddress, body: assessmentSchema },
  async ({ actor, params, body, now }) =>
    Response.json(await saveAssessment(actor, { clientId: params.clientId, assessment: body }, now), {
      status: 201,
    }),
);
