import { describe, expect, it } from 'vitest';
import { returnTooFast } from '#lib/checks/rules/return-too-fast.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

// Eight weeks of 3 x 300 AU (900 AU a week) to day 53 (a Friday), then off, then one session of `au` on the return.
const LAST_BEFORE = 53;
const usual = threeAWeek(8);
const returning = (off: number, au: number): { checkIns: HistoryCheckIn[]; back: number } => {
  const back = LAST_BEFORE + off + 1;
  return { checkIns: [...usual, aCheckIn(back, { effort: 6, minutes: au / 6 })], back };
};
const holiday = (off: number) => [
  { from: day(LAST_BEFORE + 1), to: day(LAST_BEFORE + off), kind: 'holiday' as const },
];
const sayOf = (off: number, au: number) => {
  const { checkIns, back } = returning(off, au);
  return said(theOutcome(judge(returnTooFast, aHistory({ checkIns, absences: holiday(off) }), back)));
};

describe('return-too-fast', () => {
  // 70 % of the usual week after 10-20 days, 50 % after 21-41, 40 % after more: common practice.
  it.each([
    [9, 900, 'clear'],
    [10, 630, 'clear'],
    [10, 636, 'flagged watch'],
    [20, 636, 'flagged watch'],
    [21, 450, 'clear'],
    [21, 456, 'flagged watch'],
    [42, 360, 'clear'],
    [42, 366, 'flagged watch'],
    [42, 906, 'flagged act'],
  ])('after %i days off, %i AU give %s', (off, au, expected) => {
    expect(sayOf(off, au)).toBe(expected);
  });
  it('says the share, the amounts and what a step back in would be', () => {
    const { checkIns, back } = returning(21, 540);
    const finding = theFinding(judge(returnTooFast, aHistory({ checkIns, absences: holiday(21) }), back));
    expect(finding.sentence).toContain('Back after 21 days');
    expect(finding.sentence).toContain('**60 % of the usual week**');
    expect(finding.sentence).toContain('(540 AU of 900)');
    expect(finding.since).toBe(day(back));
  });
  it('takes silence for a break only when it is longer than any before', () => {
    const { checkIns, back } = returning(12, 900);
    const quiet = aHistory({ checkIns });
    expect(said(theOutcome(judge(returnTooFast, quiet, back)))).toBe('flagged watch');
    const often = checkIns.filter(({ date }) => date < day(14) || date > day(30));
    expect(said(theOutcome(judge(returnTooFast, aHistory({ checkIns: often }), back)))).toBe('clear');
  });
  it('looks at the first week for two weeks, then no more', () => {
    const { checkIns, back } = returning(21, 900);
    const history = aHistory({ checkIns, absences: holiday(21) });
    expect(said(theOutcome(judge(returnTooFast, history, back + 13)))).toBe('flagged watch');
    expect(said(theOutcome(judge(returnTooFast, history, back + 14)))).toBe('clear');
  });
  it('asks for four ordinary weeks before the break', () => {
    const short = [...threeAWeek(2), aCheckIn(40)];
    const absences = [{ from: day(12), to: day(39), kind: 'holiday' as const }];
    expect(said(theOutcome(judge(returnTooFast, aHistory({ checkIns: short, absences }), 40)))).toMatch(
      /^not-enough-history: \d of 4 ordinary weeks before the break$/,
    );
  });
  it('proposes one rung back after 21 days, two after 42, a new start after 84', () => {
    const stepOf = (off: number) => {
      const { checkIns, back } = returning(off, 900);
      return theFinding(judge(returnTooFast, aHistory({ checkIns, absences: holiday(off) }), back)).step.text;
    };
    expect(stepOf(20)).toBe('Take volume out for this week, then go back up in steps');
    expect(stepOf(21)).toBe('Take volume out; holds one rung back');
    expect(stepOf(41)).toBe('Take volume out; holds one rung back');
    expect(stepOf(42)).toBe('Take volume out; holds two rungs back');
    expect(stepOf(83)).toBe('Take volume out; holds two rungs back');
    expect(stepOf(84)).toBe('Start again as new: place every ladder afresh');
  });
});
