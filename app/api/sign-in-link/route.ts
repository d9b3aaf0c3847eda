import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { LIMITS, limitRequest } from '#lib/edge/rate-limit.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { kickMails } from '#lib/jobs/queue.ts';
import { logger } from '#lib/logger.ts';
import { linkRequest } from '#lib/schemas/sign-in.ts';
import { mailSignInLink } from '#lib/usecases/sign-in-link.ts';

/** The answer does not wait for the work: nobody may tell from its time whether an address is known. */
export const POST = defineOpenRoute(
  { body: linkRequest, limit: LIMITS['sign-in-link'] },
  async ({ body, now }) => {
    await limitRequest(LIMITS['sign-in-link-address'], body.email.toLowerCase());
    mailSignInLink(body.email, now)
      .then(() => kickMails())
      .catch((error: unknown) => logger().error({ error }, 'sign-in link not mailed'));
    return seeOther('/sign-in?say=mailed');
  },
);
