import { randomBytes } from 'node:crypto';
import { type NextRequest, NextResponse } from 'next/server';
import { pageHeaders, routeHeaders } from '#lib/edge/security-headers.ts';

/** Sets headers, decides nothing: who may do what is asked in every page and route. */
export function proxy(request: NextRequest): NextResponse {
  const serving = {
    https: (process.env.PLUMBLINE_ORIGIN ?? '').startsWith('https://'),
    development: process.env.NODE_ENV === 'development',
  };
  const isRoute = /^\/(api\/|livez$|metrics$|readyz$)/.test(request.nextUrl.pathname);
  const nonce = randomBytes(16).toString('base64');
  const headers = isRoute ? routeHeaders(serving, request.nextUrl.pathname) : pageHeaders(nonce, serving);
  // Next reads the nonce from the request's policy and puts it on its own scripts.
  const passedOn = new Headers(request.headers);
  passedOn.delete('content-security-policy');
  passedOn.delete('x-nonce');
  if (!isRoute) {
    passedOn.set('content-security-policy', headers['content-security-policy'] ?? '');
    passedOn.set('x-nonce', nonce);
  }
  const response = NextResponse.next({ request: { headers: passedOn } });
  for (const [name, value] of Object.entries(headers)) response.headers.set(name, value);
  return response;
}

/** Everything but the built files, which get their headers in next.config.ts. */
export const config = { matcher: ['/((?!_next/static/).*)'] };
