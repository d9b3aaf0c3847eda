import { signInByLink } from '#lib/auth/sign-in.ts';

export const ORIGIN = 'http://localhost:3000';

/** A request as a browser on one of our pages sends it. */
export function browserRequest(
  path: string,
  options: {
    method?: string;
    cookie?: string;
    json?: unknown;
    form?: Record<string, string>;
    headers?: Record<string, string>;
  } = {},
): Request {
  const method = options.method ?? (options.json !== undefined || options.form ? 'POST' : 'GET');
  const headers = new Headers({
    host: 'localhost:3000',
    ...(method === 'GET' ? {} : { origin: ORIGIN }),
    ...options.headers,
  });
  if (options.cookie) headers.set('cookie', options.cookie);
  if (options.json !== undefined) headers.set('content-type', 'application/json');
  if (options.form) headers.set('content-type', 'application/x-www-form-urlencoded');
  const body = options.form
    ? new URLSearchParams(options.form).toString()
    : options.json === undefined
      ? null
      : JSON.stringify(options.json);
  return new Request(`${ORIGIN}${path}`, { method, headers, body });
}

export const noParams = { params: Promise.resolve({}) };

/** What a browser would send back of the cookies that an answer set. */
export function cookieOf(headers: Headers): string {
  return headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0] ?? '')
    .filter((pair) => !pair.endsWith('='))
    .join('; ');
}

/** The cookie of a fresh session of that user. */
export async function cookieFor(userId: string): Promise<string> {
  return cookieOf(await signInByLink(userId, { request: browserRequest('/sign-in'), address: null }));
}
