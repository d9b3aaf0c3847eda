import { describe, expect, it } from 'vitest';
import { goneQuiet } from '#lib/checks/rules/gone-quiet.ts';
import { judge, theFinding } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

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
  it('names the longest gap, or none after a single check-in', () => {
    const once = judge(goneQuiet, aHistory({ checkIns: [aCheckIn(0)] }), 5);
    expect(theFinding(once).sentence).toBe('Nothing for **5 days**, since Mon 2 Mar.');
    const twice = judge(goneQuiet, aHistory({ checkIns: [aCheckIn(0), aCheckIn(1)] }), 6);
    expect(theFinding(twice).sentence).toBe(
      'Nothing for **5 days**, since Tue 3 Mar; the longest gap in 12 weeks was 1 day.',
    );
  });
  it('says how long and what is usual, and proposes to write first', () => {
    const [finding] = flagged(LAST + 10);
    expect(finding?.sentence).toContain('10 days');
    expect(finding?.step.kind).toBe('write-first');
  });
});

describe('gone-quiet before the first check-in, and in the first month', () => {
  const level = (days: number, over: Parameters<typeof aHistory>[0]) => {
    const [outcome] = judge(goneQuiet, aHistory(over), days);
    return outcome?.status === 'flagged' ? outcome.level : 'none';
  };
  const invited = { client: { standing: 'invited' as const, joinedAt: null } };
  // 3 days after the invitation, 4 after the first planned day, 5 in the first month: common practice.
  it.each([
    [2, 'none'],
    [3, 'watch'],
    [9, 'watch'],
    [10, 'act'],
  ])('never came in: %i days give %s', (days, expected) => {
    expect(level(days, invited)).toBe(expected);
  });
  it.each([
    [3, 'none'],
    [4, 'watch'],
    [10, 'act'],
  ])('never started: %i days give %s', (days, expected) => {
    expect(level(days, {})).toBe(expected);
  });
  it('counts from the first planned day, that day itself not, also when it was a day off', () => {
    const absences = [{ from: day(0), to: day(2), kind: 'illness' as const }];
    expect(level(5, { absences })).toBe('none');
    expect(level(6, { absences })).toBe('watch');
  });
  it('speaks after 5 days up to the 28th day, then after 7', () => {
    const until = (last: number) => ({
      checkIns: [...REGULAR.filter((one) => one.date < day(last)), aCheckIn(last)],
    });
    expect(level(26, until(22))).toBe('none');
    expect(level(27, until(22))).toBe('watch');
    expect(level(28, until(23))).toBe('none');
    expect(level(30, until(23))).toBe('watch');
  });
  it('says nothing of somebody paused or gone', () => {
    expect(level(90, { checkIns: REGULAR, client: { standing: 'paused' } })).toBe('none');
    expect(level(90, { checkIns: REGULAR, client: { standing: 'left' } })).toBe('none');
  });
});
