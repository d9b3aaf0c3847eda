import { describe, expect, it } from 'vitest';
import { goneQuiet } from '#lib/checks/rules/gone-quiet.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aHistory, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

// Ten weeks of Monday, Wednesday, Friday: the last check-in is day 67, the longest own gap 3 days.
const REGULAR = threeAWeek(10);
const LAST = 67;
const flagged = (days: number, over: Parameters<typeof aHistory>[0] = {}) =>
  judge(goneQuiet, aHistory({ checkIns: REGULAR, ...over }), days).filter(
    (outcome) => outcome.status === 'flagged',
  );

describe('gone-quiet', () => {
  // Silent for max(7 days, 1.35 x own longest gap): watch; max(10, 1.5 x): act. Own rule.
  it.each([
    [6, 'none'],
    [7, 'watch'],
    [9, 'watch'],
    [10, 'act'],
    [30, 'act'],
  ])('%i days of silence give %s', (silent, level) => {
    expect(flagged(LAST + silent)[0]?.level ?? 'none').toBe(level);
  });
  it('gives room to somebody whose own gaps are long', () => {
    // One gap of 10 days: 1.35 x 10 = 13.5.
    const checkIns = REGULAR.filter((one) => one.date < day(40) || one.date >= day(49));
    expect(flagged(LAST + 9, { checkIns })).toEqual([]);
    expect(flagged(LAST + 16, { checkIns })).toHaveLength(1);
  });
  it('leaves holidays out', () => {
    const absences = [{ from: day(68), to: day(90), kind: 'holiday' as const }];
    expect(flagged(88, { absences })).toEqual([]);
  });
  it('says how long and what is usual, and proposes to write first', () => {
    const [finding] = flagged(LAST + 10);
    expect(finding?.sentence).toContain('10 days');
    expect(finding?.step.kind).toBe('write-first');
  });
});
