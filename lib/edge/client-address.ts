import { isIP } from 'node:net';

/**
 * The address a request came from, or null when nobody trustworthy says so. Anybody can send X-Forwarded-For, so it
 * counts only behind a proxy that appends to it (PLUMBLINE_TRUST_PROXY=1), and then only its last entry.
 */
export function clientAddress(headers: Headers, trustProxy: boolean): string | null {
  if (!trustProxy) return null;
  const last = headers.get('x-forwarded-for')?.split(',').at(-1)?.trim() ?? '';
  return isIP(last) ? last : null;
}
