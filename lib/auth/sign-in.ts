import { env } from '#lib/config/env.ts';
import { AppError } from '#lib/errors.ts';
import { logger } from '#lib/logger.ts';
import { auth } from './auth.ts';
import { authHeaders, cookiesOf } from './auth-headers.ts';

type From = { readonly request: Request; readonly address: string | null };

/** Signs in by password through better-auth's own route, so that its limits count. Gives the cookies to set. */
export async function signInByPassword(
  input: { email: string; password: string },
  from: From,
): Promise<Headers> {
  const headers = authHeaders(from.request, from.address);
  headers.set('content-type', 'application/json');
  const email = input.email.trim().toLowerCase();
  const answer = await auth().handler(
    new Request(`${env().PLUMBLINE_ORIGIN}/api/auth/sign-in/email`, {
      method: 'POST',
      headers,
      body: JSON.stringify({ email, password: input.password }),
    }),
  );
  if (answer.ok) return cookiesOf(answer.headers);
  logger().warn({ status: answer.status }, 'sign-in refused');
  if (answer.status === 429) {
    const wait = answer.headers.get('retry-after') ?? answer.headers.get('x-retry-after') ?? '60';
    throw new AppError('too-many', `Too many tries. Wait ${wait} seconds, then try again.`, {
      fields: { 'retry-after': wait },
    });
  }
  if (answer.status >= 500) throw new Error(`better-auth answered ${answer.status}`);
  throw new AppError('signed-out', 'E-mail address or password is not right. Check both and try again.');
}

/** Signs a user in whose entry link was just used up. Gives the cookies to set. */
export async function signInByLink(userId: string, from: From): Promise<Headers> {
  const { headers } = await auth().api.signInAs({
    body: { userId },
    headers: authHeaders(from.request, from.address),
    returnHeaders: true,
  });
  return cookiesOf(headers);
}

/** Ends the session of this request. Gives the cookies to set. */
export async function signOut(request: Request): Promise<Headers> {
  const { headers } = await auth().api.signOut({ headers: request.headers, returnHeaders: true });
  return cookiesOf(headers);
}
