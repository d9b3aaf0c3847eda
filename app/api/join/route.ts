import { signInByLink } from '#lib/auth/sign-in.ts';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { entryToken } from '#lib/schemas/sign-in.ts';
import { joinByLink } from '#lib/usecases/join-by-link.ts';

/** The button of the entry page: uses the link up and signs the phone in. */
export const POST = defineOpenRoute(
  { body: entryToken, limit: LIMITS.join },
  async ({ body, request, address, now }) => {
    const joined = await joinByLink(body.token, now);
    if (!joined) return seeOther('/join/closed');
    return seeOther('/', await signInByLink(joined.userId, { request, address }));
  },
);
