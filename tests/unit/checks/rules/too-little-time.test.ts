import { describe, expect, it } from 'vitest';
import { tooLittleTime } from '#lib/checks/rules/too-little-time.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aPlanItem, day } from '#tests/fixtures/history-builders.ts';

/** One session on each day; those in `trained` with the rung, the others without. */
const sessions = (dates: number[], trained: number[]): HistoryCheckIn[] =>
  dates.map((days) => aCheckIn(days, trained.includes(days) ? {} : { sets: [] }));
const NINE = [13, 15, 17, 20, 22, 24, 27, 29, 31];
const saidOf = (checkIns: HistoryCheckIn[], days = 35, over = {}) =>
  said(theOutcome(judge(tooLittleTime, aHistory({ checkIns, ...over }), days)));

describe('too-little-time', () => {
  it('speaks for 4 of 9 logged sessions', () => {
    const finding = theFinding(
      judge(tooLittleTime, aHistory({ checkIns: sessions(NINE, [13, 17, 22, 29]) }), 35),
    );
    expect(finding.sentence).toBe(
      'Pull-up: trained in **4 of 9** logged sessions of 28 days that have it in the plan.',
    );
    // Lower tail of 9 tries at 0.8, by hand.
    expect(finding.evidence).toMatchObject({ trained: 4, planned: 9, p: 0.0196 });
    expect(finding).toMatchObject({ level: 'watch', tier: 'this-week' });
  });
  it('is clear at 5 of 9, and for an honest trainer', () => {
    expect(saidOf(sessions(NINE, [13, 17, 22, 29, 31]))).toBe('clear');
    expect(saidOf(sessions(NINE, NINE))).toBe('clear');
  });
  it('asks for a test besides the half: 1 of 4 may be chance, 0 of 4 is not', () => {
    expect(saidOf(sessions(NINE.slice(-4), [31]))).toBe('clear');
    expect(saidOf(sessions(NINE.slice(-4), []))).toBe('flagged watch');
  });
  it('needs a chance under the limit: 0 of 4 for somebody who does it in 80 % has one of 0.0016', () => {
    const none = aHistory({ checkIns: sessions(NINE.slice(-4), []) });
    const under = (p: number) => said(theOutcome(judge(tooLittleTime, none, 35, { 'tooLittleTime.p': p })));
    expect(under(0.0016)).toBe('clear');
    expect(under(0.00161)).toBe('flagged watch');
  });
  it('is clear at exactly half', () => {
    expect(saidOf(sessions([...NINE, 33], [13, 17, 22, 29, 31]))).toBe('clear');
    expect(saidOf(sessions([...NINE, 33], [13, 17, 22, 29]))).toBe('flagged watch');
  });
  it('needs four logged sessions with it, and the 21st day', () => {
    expect(saidOf(sessions([27, 29, 31], []))).toBe(
      'not-enough-history: 3 of 4 logged sessions with it in the plan',
    );
    const early = [7, 9, 11, 13, 15, 17];
    expect(saidOf(sessions(early, []), 19)).toBe('not-enough-history: day 20 of 21 here');
    expect(saidOf(sessions(early, []), 20)).toBe('flagged watch');
  });
  it('does not count the first week of a plan', () => {
    const plans = [aPlan({ items: [] }), aPlan({ version: 2, from: day(22) })];
    expect(saidOf(sessions(NINE, []), 35, { plans })).toContain('2 of 4');
  });
  it('judges sessions logged, not the calendar: forgotten logs are no skipped drill', () => {
    expect(saidOf(sessions([13, 22, 29, 31], [13, 22, 29, 31]))).toBe('clear');
  });
  it('is lowered by no silence: the 28 days end with the last logged session', () => {
    expect(saidOf(sessions(NINE, [22, 24, 27, 29]), 50)).toBe('flagged watch');
    const early = [8, ...NINE, 35, 36];
    expect(saidOf(sessions(early, [8, 22, 24, 27, 29]), 36)).toBe('flagged watch'); // day 8 is out: 4 of 11
    expect(saidOf(sessions([8, ...NINE, 35], [8, 22, 24, 27, 29]), 36)).toBe('flagged watch'); // 5 of 11
  });
  it('counts only sessions that have it in the plan', () => {
    const plans = [aPlan({ items: [aPlanItem({ session: 'B' })] })];
    expect(saidOf(sessions(NINE, []), 35, { plans })).toContain('0 of 4');
    const unnamed = sessions(NINE, []).map((checkIn) => ({ ...checkIn, session: null }));
    expect(saidOf(unnamed)).toBe('flagged watch');
    const two = [aPlan({ items: [aPlanItem(), aPlanItem({ session: 'B', rungId: 'other' })] })];
    expect(saidOf(unnamed, 35, { plans: two })).toContain('0 of 4');
  });
  it('is silent under a limit and when the plan has no sets of it', () => {
    const limit = {
      tissue: 'elbow-bending' as const,
      region: null,
      side: null,
      rule: 'none' as const,
      percent: null,
      from: day(1),
      until: null,
      who: 'coach',
    };
    expect(saidOf(sessions(NINE, []), 35, { limits: [limit] })).toContain('0 of 4');
    expect(saidOf(sessions(NINE, []), 35, { limits: [{ ...limit, tissue: 'neck' }] })).toBe('flagged watch');
    expect(
      saidOf(sessions(NINE, []), 35, {
        plans: [aPlan({ items: [aPlanItem({ target: null, minutes: 10 })] })],
      }),
    ).toBe('clear');
  });
});
