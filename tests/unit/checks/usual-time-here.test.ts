import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { type Stay, usualTimeHere } from '#lib/checks/usual-time-here.ts';

const stay = (clientId: string, days: number, passed = true): Stay => ({ clientId, days, passed });
const here = (...stays: Stay[]) => usualTimeHere(stays, DEFAULT_LIMITS);

describe('the usual time of a rung here', () => {
  it('is the Kaplan-Meier median, by hand: half are still there after 40 days', () => {
    // 20: 3 of 4 left; 30 censored; 40: 3/4 x 1/2 = 3/8.
    expect(here(stay('a', 20), stay('b', 30, false), stay('c', 40), stay('d', 90, false))).toEqual({
      days: 40,
      passed: 2,
    });
  });
  it('counts those still there: without them the median would be shorter', () => {
    const passed = [stay('a', 20), stay('b', 30), stay('c', 40)];
    expect(here(...passed)?.days).toBe(30);
    expect(here(...passed, stay('d', 60, false), stay('e', 60, false))?.days).toBe(40);
  });
  it('is unknown while more than half are still there', () => {
    expect(here(stay('a', 20), stay('b', 60, false), stay('c', 60, false))).toBeUndefined();
    expect(here()).toBeUndefined();
  });
  it('counts a client once, also with two sides', () => {
    expect(here(stay('a', 20), stay('a', 26))).toEqual({ days: 20, passed: 1 });
  });
  it('leaves out a step up after 2 days, not after 3', () => {
    expect(here(stay('a', 2), stay('b', 50))).toEqual({ days: 50, passed: 1 });
    expect(here(stay('a', 3), stay('b', 50))).toEqual({ days: 3, passed: 2 });
  });
});
