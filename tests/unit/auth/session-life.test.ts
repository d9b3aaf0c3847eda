import { expect, it } from 'vitest';
import { isSessionOver } from '#lib/auth/session-life.ts';

const HOUR = 60;
const DAY = 24 * HOUR;

it.each([
  ['coach', 12 * HOUR, DAY, false],
  ['coach', 12 * HOUR + 1, DAY, true],
  ['lead', 1, 14 * DAY, false],
  ['assistant', 1, 14 * DAY + 1, true],
  ['client', 90 * DAY, 100 * DAY, false],
  ['client', 90 * DAY + 1, 100 * DAY, true],
  ['guardian', 1, 400 * DAY + 1, true],
] as const)('a session of a %s, idle %i minutes and %i old: over is %s', (role, idle, age, over) => {
  expect(isSessionOver(role, { idle, age })).toBe(over);
});
