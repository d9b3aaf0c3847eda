import fc from 'fast-check';
import { expect, test } from 'vitest';
import { apart } from '#lib/views/spread-labels.ts';

test('labels that stand clear stay where they are', () => {
  expect(apart([10, 60, 30], 18)).toEqual([10, 60, 30]);
});

test('close ones move down, and up again where the panel ends', () => {
  expect(apart([10, 12], 18)).toEqual([10, 28]);
  expect(apart([90, 95], 34, 100)).toEqual([66, 100]);
});

test('always at least the gap apart, in order', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 500 }), { maxLength: 8 }), (places) => {
      const moved = apart(places, 18).sort((a, b) => a - b);
      expect(moved.every((place, index) => index === 0 || place - (moved[index - 1] ?? 0) >= 18)).toBe(true);
    }),
  );
});
