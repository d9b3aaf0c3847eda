import { expect, it } from 'vitest';
import { hasBearer } from '#lib/edge/bearer.ts';

const TOKEN = 'a-token-of-24-characters';

it.each([
  [`Bearer ${TOKEN}`, true],
  [`bearer ${TOKEN}`, true],
  [`Bearer ${TOKEN}x`, false],
  [`Bearer ${TOKEN.slice(1)}`, false],
  [TOKEN, false],
  ['Bearer ', false],
  ['', false],
  [null, false],
  [undefined, false],
])('%s: %s', (authorization, right) => {
  expect(hasBearer(authorization, TOKEN)).toBe(right);
});
