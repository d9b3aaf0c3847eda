import { createPublicKey, verify } from 'node:crypto';
import { expect } from 'vitest';
import { vapidKeys } from '#lib/push/vapid-keys.ts';

/** The claims of a VAPID header, its signature and lifetime looked at (RFC 8292). */
export function claimsOf(header = ''): { aud: string; sub: string } {
  const [, token = '', key = ''] = /^vapid t=([^,]+), ?k=(.+)$/.exec(header) ?? [];
  expect(key).toBe(vapidKeys().publicKey);
  const [head = '', body = '', signature = ''] = token.split('.');
  const point = Buffer.from(key, 'base64url');
  const [x, y] = [point.toString('base64url', 1, 33), point.toString('base64url', 33)] as const;
  const publicKey = createPublicKey({ key: { kty: 'EC', crv: 'P-256', x, y }, format: 'jwk' });
  const signed = verify(
    'sha256',
    Buffer.from(`${head}.${body}`),
    { key: publicKey, dsaEncoding: 'ieee-p1363' },
    Buffer.from(signature, 'base64url'),
  );
  expect(signed).toBe(true);
  const { aud, sub, exp } = JSON.parse(Buffer.from(body, 'base64url').toString());
  expect(exp * 1_000 - Date.now()).toBeLessThanOrEqual(24 * 3_600_000);
  return { aud, sub };
}
