import type { BetterAuthPlugin } from 'better-auth';
import { APIError, createAuthEndpoint } from 'better-auth/api';
import { setSessionCookie } from 'better-auth/cookies';
import { z } from 'zod';

/**
 * A way in without a password, for people whose entry link was just used up. It has no path, so it can be called from
 * the server only; the session and its cookie are better-auth's own.
 */
export function signInAs() {
  return {
    id: 'sign-in-as',
    endpoints: {
      signInAs: createAuthEndpoint(
        { method: 'POST', body: z.object({ userId: z.uuid() }), requireHeaders: true },
        async (context) => {
          const { internalAdapter } = context.context;
          const user = await internalAdapter.findUserById(context.body.userId);
          if (!user) throw new APIError('NOT_FOUND');
          const session = await internalAdapter.createSession(user.id);
          await setSessionCookie(context, { session, user });
          return context.json({ signedIn: true });
        },
      ),
    },
  } satisfies BetterAuthPlugin;
}
