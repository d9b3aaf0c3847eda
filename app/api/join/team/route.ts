import { signInByLink } from '#lib/auth/sign-in.ts';
import { defineOpenRoute } from '#lib/edge/define-open-route.ts';
import { LIMITS } from '#lib/edge/rate-limit.ts';
import { seeOther } from '#lib/edge/see-other.ts';
import { AppError } from '#lib/errors.ts';
import { joinTeamSchema } from '#lib/schemas/team.ts';
import { joinTeam } from '#lib/usecases/team/join-team.ts';

/** Name and password of somebody who was asked into a team: uses the invitation up and signs them in. */
export const POST = defineOpenRoute(
  { body: joinTeamSchema, limit: LIMITS.join },
  async ({ body, request, address, now }) => {
    const joined = await joinTeam(body, now);
    if (joined) return seeOther('/', await signInByLink(joined.userId, { request, address }));
    if (!request.headers.get('content-type')?.includes('json')) return seeOther('/join/closed');
    throw new AppError('not-found', 'This link does not open any more. Ask who sent it for a new one.');
  },
);
