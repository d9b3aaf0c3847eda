import { defineRoute } from '#lib/edge/define-route.ts';
import { draftOfAssessment } from '#lib/schemas/assessment.ts';
import { clientAddress } from '#lib/schemas/client-address.ts';
import { draftOfGaps } from '#lib/usecases/draft-of-gaps.ts';

export const POST = defineRoute(
  { permission: 'edit-plans', params: clientAddress, body: draftOfAssessment },
  async ({ actor, params, body, now }) =>
    Response.json(
      await draftOfGaps(actor, { clientId: params.clientId, assessmentId: body.assessmentId }, now),
      { status: 201 },
    ),
);
