import { describe, expect, test } from 'vitest';
import type { SetDraft } from '#app/(client)/_phone/draft.ts';
import { OPEN_SET } from '#app/(client)/_phone/set-acts.ts';
import { beginsRest, clockOf, holdAt, restLeft, timedHold } from '#app/(client)/_phone/timer.ts';

describe('timing a hold', () => {
  test('counts down in whole seconds, then up', () => {
    expect(holdAt(0, 3)).toEqual({ ready: 3, seconds: 0 });
    expect(holdAt(2_001, 3)).toEqual({ ready: 1, seconds: 0 });
    expect(holdAt(3_000, 3)).toEqual({ ready: 0, seconds: 0 });
    expect(holdAt(10_999, 3)).toEqual({ ready: 0, seconds: 7 });
    expect(holdAt(10_999, 0)).toEqual({ ready: 0, seconds: 10 });
  });

  test('only whole seconds that were held land in the set', () => {
    expect(timedHold(10_999, 3)).toBe(7);
    expect(timedHold(1_000, 0)).toBe(1);
  });

  test('stopped before it began, or by a slip of the finger, nothing lands', () => {
    expect(timedHold(2_900, 3)).toBeNull();
    expect(timedHold(3_999, 3)).toBeNull();
    expect(timedHold(999, 0)).toBeNull();
  });
});

describe('rest', () => {
  test('is shown as a clock, never below 0:00', () => {
    expect(clockOf(restLeft(90_000, 0))).toBe('1:30');
    expect(clockOf(restLeft(90_000, 84_100))).toBe('0:06');
    expect(restLeft(90_000, 95_000)).toBe(0);
  });

  test('begins after a set that was done just now, not after one put right or not done', () => {
    const done: SetDraft = { how: 'timed', value: 12, tried: null, faults: [] };
    expect(beginsRest(OPEN_SET, done)).toBe(true);
    expect(beginsRest(done, { ...done, value: 13 })).toBe(false);
    expect(beginsRest(OPEN_SET, { ...done, how: 'not-done', value: null })).toBe(false);
    expect(beginsRest(undefined, done)).toBe(false);
  });
});
