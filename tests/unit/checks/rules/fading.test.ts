import { describe, expect, it } from 'vitest';
import { fading } from '#lib/checks/rules/fading.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aHistory, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

// Twelve weeks of three days: 12 training days in each 28. The last 28 days hold `kept` of them; day 83 is the last.
const LAST = 83;
const keeping = (kept: number) => {
  const all = threeAWeek(12);
  return [...all.slice(0, 24), ...all.slice(24, 24 + kept)];
};
const sayOf = (kept: number, over: Parameters<typeof aHistory>[0] = {}) =>
  said(theOutcome(judge(fading, aHistory({ checkIns: keeping(kept), ...over }), LAST)));

describe('fading', () => {
  // Under 45 % of the 12 expected (5.4) and at least 4 fewer: own rule.
  it.each([
    [12, 'clear'],
    [6, 'clear'],
    [5, 'flagged watch'],
    [0, 'flagged watch'],
  ])('%i of 12 training days give %s', (kept, expected) => {
    expect(sayOf(kept)).toBe(expected);
  });
  it('says both numbers', () => {
    expect(theFinding(judge(fading, aHistory({ checkIns: keeping(4) }), LAST)).sentence).toContain(
      '**4 training days** logged in 28 days; the two months before would give 12',
    );
  });
  it('is silent about few days that are fewer by less than four', () => {
    const once = threeAWeek(12).filter((_, session) => session % 3 === 0 && session < 27);
    expect(said(theOutcome(judge(fading, aHistory({ checkIns: once }), LAST)))).toBe('clear');
  });
  it('leaves days off out', () => {
    const absences = [{ from: day(60), to: day(83), kind: 'illness' as const }];
    expect(sayOf(2, { absences })).toBe('clear');
  });
  it('is silent about somebody who was off through all of the two months before', () => {
    const absences = [{ from: day(0), to: day(55), kind: 'illness' as const }];
    expect(sayOf(0, { checkIns: [], absences })).toBe('clear');
    const back = threeAWeek(12).slice(24, 26);
    expect(sayOf(0, { checkIns: back, absences })).toBe('clear');
  });
  it('waits until there are 56 days', () => {
    const outcome = theOutcome(judge(fading, aHistory({ checkIns: threeAWeek(2) }), 40));
    expect(said(outcome)).toBe('not-enough-history: 41 of 56 days here');
  });
});

describe('fading on its limits', () => {
  const spoken = (over: Parameters<typeof judge>[3], days = LAST) =>
    theOutcome(judge(fading, aHistory({ checkIns: keeping(5) }), days, over)).status;
  it('needs fewer than the share, and at least so many fewer', () => {
    expect(spoken({ 'fading.share': 5 / 12 })).toBe('clear');
    expect(spoken({ 'fading.share': 0.417 })).toBe('flagged');
    expect(spoken({ 'fading.fewer': 7 })).toBe('flagged');
    expect(spoken({ 'fading.fewer': 7.01 })).toBe('clear');
  });
  it('begins on the 56th day', () => {
    expect(spoken({}, 54)).toBe('not-enough-history');
    expect(spoken({}, 55)).toBe('clear');
  });
});
