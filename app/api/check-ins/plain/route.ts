import { defineRoute, type RouteHandler } from '#lib/edge/define-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { refusedPage } from '#lib/edge/refused-page.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { AppError } from '#lib/errors.ts';
import { kickOutbox } from '#lib/jobs/queue.ts';
import { plainCheckInSchema, plainFields } from '#lib/schemas/plain-check-in.ts';
import { countedSubmit } from '#lib/usecases/counted-submit.ts';

const submit = defineRoute(
  {
    permission: 'check-in',
    body: plainCheckInSchema,
    maxBytes: 64 * 1024,
    limit: LIMITS['check-in'],
  },
  async ({ actor, body, now }) => {
    await countedSubmit(actor, body, now).catch((error: unknown) => {
      if (!(error instanceof AppError)) throw error;
      throw new AppError(error.code, error.message, { fields: plainFields(error.fields, body) });
    });
    void kickOutbox();
    return seeOther('/today');
  },
);

/** The check-in of a phone without scripts: a refusal is a page, for nothing else could read it. */
export const POST: RouteHandler = async (request, context) => {
  const posted = request.clone();
  return refusedPage(await submit(request, context), '/api/check-ins/plain', posted);
};
