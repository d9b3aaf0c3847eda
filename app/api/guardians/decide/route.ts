import { defineRoute, type RouteHandler } from '#lib/edge/define-route.ts';
import { refusedPage } from '#lib/edge/refused-page.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { guardianDecisionSchema } from '#lib/schemas/guardian.ts';
import { decideAsGuardian } from '#lib/usecases/guardians/decide-as-guardian.ts';

const decide = defineRoute(
  { permission: 'act-as-guardian', body: guardianDecisionSchema },
  async ({ actor, body, now }) => {
    await decideAsGuardian(actor, body, now);
    return seeOther('/guardian');
  },
);

/** A plain form: a refusal is a page that says why. */
export const POST: RouteHandler = async (request, context) => {
  const posted = request.clone();
  return refusedPage(await decide(request, context), '/api/guardians/decide', posted);
};
