import { describe, expect, it } from 'vitest';
import { painRising } from '#lib/checks/rules/pain-rising.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, day } from '#tests/fixtures/history-builders.ts';

const sore = (days: number, value: number, over = {}) => aCheckIn(days, { pain: [aPain(value, over)] });
const run = (values: number[], from = 60) => values.map((value, at) => sore(from + at * 2, value));
/** Twelve check-ins at `value`, 30-52 days in: the usual of a check-in around day 66. */
const usual = (value: number) => Array.from({ length: 12 }, (_, at) => sore(30 + at * 2, value));
const on = (checkIns: HistoryCheckIn[], days = 70, over = {}) =>
  judge(painRising, aHistory({ checkIns, ...over }), days);
const saidOf = (checkIns: HistoryCheckIn[], days = 70, over = {}) =>
  said(theOutcome(on(checkIns, days, over)));

describe('pain-rising', () => {
  it('adds up what is above usual + 1', () => {
    const finding = theFinding(on([...usual(1), ...run([3, 3, 4, 4])]));
    // Usual 1: 3-1-1 = 1, 2, 4, 6.
    expect(finding.evidence).toMatchObject({ usual: 1, sum: 6, above: 3, now: 4 });
    expect(finding.sentence).toContain(
      'Right elbow, inner: 4 of 10 on Thu 7 May, usual 1; what is above usual + 1 has added up to **6** in 21 days.',
    );
    expect(finding).toMatchObject({ level: 'watch', tier: 'this-week', points: 1 });
    expect(finding.working.inputs.map((input) => input.name)).toContain('Pull-up');
  });
  it('watches at 5 and acts at 8; act is today', () => {
    expect(saidOf([...usual(0), ...run([3, 3])])).toBe('clear'); // 2 + 2
    expect(saidOf([...usual(0), ...run([3, 3, 2])])).toBe('flagged watch'); // 5
    expect(saidOf([...usual(0), ...run([4, 3, 3])])).toBe('flagged watch'); // 7
    const act = theFinding(on([...usual(0), ...run([4, 4, 3])])); // 8
    expect(act).toMatchObject({ level: 'act', tier: 'today', points: 2 });
  });
  it('is clear for a client whose usual is high, and for one who stays there', () => {
    expect(saidOf([...usual(4), ...run([4, 4, 4, 4, 4])])).toBe('clear');
    expect(saidOf([...usual(3), ...run([4, 4, 4, 4, 4])])).toBe('clear');
  });
  it('wants one of the last two check-ins 2 above usual', () => {
    const risen = run([5, 5, 1, 1]);
    expect(saidOf([...usual(0), ...risen])).toBe('clear');
    expect(saidOf([...usual(0), ...run([5, 5, 2, 1])])).toBe('flagged act');
    expect(saidOf([...usual(0), ...run([5, 5, 2, 1, 1])])).toBe('clear');
  });
  it('counts 21 days and no more', () => {
    const before = [...usual(0).slice(0, 7), sore(46, 5), sore(48, 5)];
    expect(saidOf([...before, sore(66, 2)])).toBe('flagged act'); // 4 + 4 + 1
    expect(saidOf([...before, sore(67, 2)])).toBe('flagged watch'); // 4 + 1
    expect(saidOf([...before, sore(69, 2)])).toBe('clear'); // 1
  });
  it('adds up mornings apart, with 0.5', () => {
    const mornings = (values: number[]) =>
      values.map((value, at) =>
        aCheckIn(60 + at * 2, { pain: [aPain(1), aPain(value, { moment: 'morning' })] }),
      );
    const before = Array.from({ length: 12 }, (_, at) =>
      aCheckIn(30 + at * 2, { pain: [aPain(1), aPain(0, { moment: 'morning' })] }),
    );
    expect(saidOf([...before, ...mornings([1, 1, 2])])).toBe('clear'); // 0.5, 1, 2.5
    expect(saidOf([...before, ...mornings([1, 1, 1, 2])])).toBe('flagged watch'); // 3
    expect(theFinding(on([...before, ...mornings([2, 2])])).sentence).toContain(
      'mornings above usual + 0.5 have added up to **3**',
    );
  });
  it('takes the intake value as usual under five check-ins 14-56 days ago', () => {
    const client = {
      intakePain: [{ region: 'elbow-inner' as const, side: 'right' as const, value: 3, sinceWeeks: 1 }],
    };
    expect(saidOf(run([4, 4, 4, 4, 4]), 70, { client })).toBe('clear');
    expect(saidOf([...usual(0).slice(0, 4), ...run([5, 5, 5])], 70)).toBe('flagged act');
  });
  it('needs four check-ins; before that 3 above the intake value', () => {
    expect(saidOf([sore(0, 2), sore(2, 2)], 3)).toBe('not-enough-history: 2 of 4 check-ins known');
    expect(saidOf([sore(0, 2), sore(2, 3)], 3)).toBe('flagged watch');
    const client = {
      intakePain: [{ region: 'elbow-inner' as const, side: 'right' as const, value: 1, sinceWeeks: 1 }],
    };
    expect(saidOf([sore(0, 2), sore(2, 3)], 3, { client })).toContain('not-enough-history');
    expect(saidOf([sore(0, 2), sore(2, 4)], 3, { client })).toBe('flagged watch');
  });
  it('is lowered by no silence: neither by days without a check-in nor by check-ins that do not speak of it', () => {
    const rising = [...usual(0), ...run([4, 4, 3])];
    expect(saidOf(rising, 85)).toBe('flagged act');
    expect(saidOf(rising, 86)).toContain('not-enough-history');
    const silent = [66, 68].map((days) => aCheckIn(days, { nothingHurts: false }));
    expect(saidOf([...rising, ...silent])).toBe('flagged act');
    expect(saidOf([...rising, aCheckIn(66), aCheckIn(68)])).toBe('clear');
  });
  it('is one step stricter under 18', () => {
    const checkIns = [...usual(0), ...run([3, 3])];
    expect(saidOf(checkIns, 70, { client: { under18: true } })).toBe('flagged watch');
  });
  it('leaves soreness of muscles out', () => {
    expect(
      on([...run([5, 5, 5]).map((checkIn) => ({ ...checkIn, pain: [aPain(5, { kind: 'muscle' })] }))]),
    ).toEqual([]);
  });
  it('keeps sides and regions apart', () => {
    const left = run([4, 4, 3]).map((checkIn) => ({
      ...checkIn,
      pain: [...checkIn.pain, aPain(0, { side: 'left' })],
    }));
    expect(on([...usual(0), ...left]).map((outcome) => `${outcome.subject.key} ${said(outcome)}`)).toEqual([
      'elbow-inner:left not-enough-history: 3 of 4 check-ins known',
      'elbow-inner:right flagged act',
    ]);
    expect(day(0)).toBe('2026-03-02');
  });
  it('goes by the sum from the fourth check-in on', () => {
    expect(saidOf(run([0, 0, 3]))).toBe('flagged watch');
    expect(saidOf(run([0, 0, 0, 3]))).toBe('clear');
  });
  it('names the sum that raised it', () => {
    const sentence = theFinding(on([...usual(0), ...run([3, 3, 2])])).sentence;
    expect(sentence).toContain('what is above usual + 1 has added up to **5**');
  });
});
