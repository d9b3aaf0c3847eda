import { createHash, timingSafeEqual } from 'node:crypto';

/** True when the request carries this token. Takes the same time however much of it is right. */
export function hasBearer(authorization: string | null | undefined, token: string): boolean {
  const given = /^Bearer (.+)$/i.exec(authorization ?? '')?.[1] ?? '';
  const digest = (text: string) => createHash('sha256').update(text).digest();
  return timingSafeEqual(digest(given), digest(token));
}
