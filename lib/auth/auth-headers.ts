import { env } from '#lib/config/env.ts';
import { ADDRESS_HEADER } from './auth.ts';

/** What better-auth may know of a request: where it came from, as far as we trust that, and with what. Nothing else. */
export function authHeaders(request: Request, address: string | null): Headers {
  const headers = new Headers({ origin: env().PLUMBLINE_ORIGIN });
  const agent = request.headers.get('user-agent');
  if (agent) headers.set('user-agent', agent.slice(0, 300));
  if (address) headers.set(ADDRESS_HEADER, address);
  return headers;
}

/** Only the cookies of an answer. */
export function cookiesOf(headers: Headers): Headers {
  const cookies = new Headers();
  for (const cookie of headers.getSetCookie()) cookies.append('set-cookie', cookie);
  return cookies;
}
