import type { Role } from '#lib/domain/vocabulary.ts';

const HOUR = 60;
const DAY = 24 * HOUR;

/** Minutes that a sign-in counts: since it was last used, and in all. A phone is its owner's; a coach's screen is shared more. */
const MEMBER = { idle: 12 * HOUR, inAll: 14 * DAY };
const CLIENT = { idle: 90 * DAY, inAll: 400 * DAY };

export function isSessionOver(role: Role, minutes: { idle: number; age: number }): boolean {
  const life = role === 'client' || role === 'guardian' ? CLIENT : MEMBER;
  return minutes.idle > life.idle || minutes.age > life.inAll;
}
