import { describe, expect, it } from 'vitest';
import { painLingering } from '#lib/checks/rules/pain-lingering.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, day } from '#tests/fixtures/history-builders.ts';

const sore = (days: number, value: number, over = {}) => aCheckIn(days, { pain: [aPain(value, over)] });
const run = (values: number[], from = 30) => values.map((value, at) => sore(from + at * 2, value));
const saidOf = (checkIns: HistoryCheckIn[], days = 40, over = {}) =>
  said(theOutcome(judge(painLingering, aHistory({ checkIns, ...over }), days)));
const intake = (value: number, sinceWeeks: number) => ({
  client: { intakePain: [{ region: 'elbow-inner' as const, side: 'right' as const, value, sinceWeeks }] },
});

describe('pain-lingering', () => {
  it('speaks when more than half of five check-ins are at 3 or more', () => {
    const finding = theFinding(judge(painLingering, aHistory({ checkIns: run([3, 1, 3, 0, 3]) }), 40));
    expect(finding).toMatchObject({ level: 'watch', tier: 'this-week', evidence: { sore: 3, checkIns: 5 } });
    expect(finding.sentence).toContain('Right elbow, inner: 3 or more on **3 of 5** check-ins in 21 days.');
  });
  it('is clear at half, and at 2', () => {
    expect(saidOf(run([3, 1, 3, 1, 3, 1]))).toBe('clear');
    expect(saidOf(run([2, 2, 2, 2, 2]))).toBe('clear');
    expect(saidOf(run([2, 2, 2, 2, 2]), 40, { client: { under18: true } })).toBe('flagged watch');
  });
  it('needs five check-ins in 21 days', () => {
    expect(saidOf(run([4, 4, 4, 4]))).toBe('not-enough-history: 4 of 5 check-ins known in 21 days');
    expect(saidOf([sore(18, 4), ...run([4, 4, 4, 4], 32)])).toBe('flagged watch'); // 18 to 38: 21 days
    expect(saidOf([sore(17, 4), ...run([4, 4, 4, 4], 32)])).toContain('4 of 5');
  });
  it('speaks from day 1 of what was sore for weeks at intake, until the counts take over', () => {
    const finding = theFinding(judge(painLingering, aHistory(intake(3, 3)), 0));
    expect(finding.sentence).toBe('Right elbow, inner: sore since before the start, **3 of 10** at intake.');
    expect(judge(painLingering, aHistory(intake(3, 2)), 0).map(said)).toEqual([
      expect.stringContaining('not-enough'),
    ]);
    expect(judge(painLingering, aHistory(intake(2, 9)), 0).map(said)).toEqual([
      expect.stringContaining('not-enough'),
    ]);
    expect(saidOf(run([0, 0, 0, 0, 0]), 40, intake(3, 8))).toBe('clear');
  });
  it('is silent under a limit on the place until that ends, and closes nothing', () => {
    const limit = {
      tissue: null,
      region: 'elbow-inner' as const,
      side: null,
      rule: 'reduced' as const,
      percent: 50,
      from: day(1),
      until: day(40),
      who: 'coach',
    };
    const five = run([4, 4, 4, 4, 4]);
    expect(saidOf(five, 40, { limits: [limit] })).toBe('clear, lower bound');
    expect(saidOf(five, 41, { limits: [limit] })).toBe('flagged watch');
    expect(saidOf(five, 40, { limits: [{ ...limit, region: 'knee' }] })).toBe('flagged watch');
    expect(saidOf(five, 40, { limits: [{ ...limit, side: 'left' }] })).toBe('flagged watch');
  });
  it('is lowered by no silence', () => {
    const five = run([4, 4, 4, 4, 4]);
    expect(saidOf(five, 59)).toBe('flagged watch');
    expect(saidOf(five, 60)).toContain('no check-in in 21 days');
  });
  it('knows limits on the tissue, from their first day', () => {
    const five = run([4, 4, 4, 4, 4]);
    const limit = {
      tissue: 'elbow-bending' as const,
      region: null,
      side: null,
      rule: 'reduced' as const,
      percent: 50,
      from: day(40),
      until: null,
      who: 'coach',
    };
    expect(saidOf(five, 40, { limits: [limit] })).toBe('clear, lower bound');
    expect(saidOf(five, 39, { limits: [limit] })).toBe('flagged watch');
    expect(saidOf(five, 40, { limits: [{ ...limit, tissue: 'neck' }] })).toBe('flagged watch');
    expect(saidOf(five, 40, { limits: [{ ...limit, tissue: null }] })).toBe('flagged watch');
  });
  it('counts once there is something to count, also for what was sore before', () => {
    const finding = theFinding(
      judge(painLingering, aHistory({ checkIns: run([3, 3, 3, 3, 3]), ...intake(4, 9) }), 40),
    );
    expect(finding.sentence).toContain('**5 of 5**');
    expect(finding.evidence.sinceBeforeStart).toBe(false);
  });
});
