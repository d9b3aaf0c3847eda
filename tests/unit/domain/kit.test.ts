import { expect, test } from 'vitest';
import { kitNeeded } from '#lib/domain/kit.ts';

test.each([
  [['hard-floor'], []],
  [['hard-floor', 'wall', 'mat'], []],
  [['parallel-bars', 'hard-floor'], []],
  [['parallel-bars', 'wall'], ['parallel bars']],
  [['bar', 'rings'], ['bar or rings']],
  [
    ['bar', 'box'],
    ['bar', 'box'],
  ],
  [[], []],
])('%j needs %j', (equipment, needed) => {
  expect(kitNeeded(equipment)).toEqual(needed);
});
