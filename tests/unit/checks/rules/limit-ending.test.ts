import { describe, expect, it } from 'vitest';
import { limitEnding } from '#lib/checks/rules/limit-ending.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aHistory, day } from '#tests/fixtures/history-builders.ts';

describe('limit-ending', () => {
  const limit = (over: Partial<HistoryLimit> = {}): HistoryLimit => ({
    tissue: null,
    region: 'elbow-inner',
    side: 'right',
    rule: 'reduced',
    percent: 50,
    from: day(0),
    until: day(20),
    who: 'physiotherapist',
    ...over,
  });
  const sayOf = (days: number, over: Partial<HistoryLimit> = {}) =>
    said(theOutcome(judge(limitEnding, aHistory({ limits: [limit(over)] }), days)));
  it.each([
    [16, 'clear'],
    [17, 'flagged watch'],
    [20, 'flagged watch'],
    [21, 'clear'],
  ])('on day %i a limit until day 20 gives %s', (days, expected) => {
    expect(sayOf(days)).toBe(expected);
  });
  it('says nothing of an open limit or one that has not begun', () => {
    expect(sayOf(18, { until: null })).toBe('clear');
    expect(sayOf(18, { from: day(19) })).toBe('clear');
  });
  it('speaks on the day it begins', () => {
    expect(sayOf(18, { from: day(18) })).toBe('flagged watch');
  });
  it.each<[Partial<HistoryLimit>, string]>([
    [{}, 'less load, right elbow, inner'],
    [{ region: null, side: null, rule: 'no-floor' }, 'no floor'],
    [
      { region: null, tissue: 'hamstrings', side: 'left', rule: 'none' },
      'no load, left hamstrings and adductors',
    ],
    [{ region: null, tissue: 'hamstrings', side: 'right' }, 'less load, right hamstrings and adductors'],
    [{ region: null, tissue: 'hamstrings', side: 'middle' }, 'less load, hamstrings and adductors'],
    [{ region: null, tissue: 'hamstrings', side: null }, 'less load, hamstrings and adductors'],
  ])('says what is ruled out and where: %j', (over, words) => {
    const finding = theFinding(judge(limitEnding, aHistory({ limits: [limit(over)] }), 18));
    expect(finding.sentence).toBe(
      `The limit “${words}” ends in **2 days**, after Sun 22 Mar; set by physiotherapist.`,
    );
  });
  it('lists limits in one order, whatever the order of rows', () => {
    const rows = [limit(), limit({ side: 'left' }), limit({ rule: 'none' })];
    for (const limits of [rows, [...rows].reverse()])
      expect(judge(limitEnding, aHistory({ limits }), 18).map(({ subject }) => subject.key)).toEqual([
        `none:elbow-inner:right:${day(20)}`,
        `reduced:elbow-inner:left:${day(20)}`,
        `reduced:elbow-inner:right:${day(20)}`,
      ]);
  });
  it.each([
    ['the one that begins today', [limit(), limit({ who: 'coach', from: day(18) })], 'coach'],
    ['of two of one day the last by name', [limit(), limit({ who: 'coach' })], 'physiotherapist'],
  ])('takes of two alike %s, whatever the order of rows', (_, rows, who) => {
    for (const limits of [rows, [...rows].reverse()]) {
      const finding = theFinding(judge(limitEnding, aHistory({ limits }), 18));
      expect(finding.evidence.who).toBe(who);
    }
  });
  it('judges the newer of two alike that stand, whatever the order of rows', () => {
    const rows = [limit(), limit({ who: 'coach', from: day(2) }), limit({ who: 'doctor', from: day(19) })];
    for (const limits of [rows, [...rows].reverse()]) {
      const finding = theFinding(judge(limitEnding, aHistory({ limits }), 18));
      expect(finding.sentence).toContain('set by coach.');
    }
  });
});
