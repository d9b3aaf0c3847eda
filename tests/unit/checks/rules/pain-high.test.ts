import { describe, expect, it } from 'vitest';
import { painHigh } from '#lib/checks/rules/pain-high.ts';
import type { HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain } from '#tests/fixtures/history-builders.ts';

// Pain of 6 or more of 10, joint or tendon: stop that work (model after Thomee 1997; the number is common practice).
const flagged = (checkIns: HistoryCheckIn[], days = 12) =>
  judge(painHigh, aHistory({ checkIns }), days).filter((outcome) => outcome.status === 'flagged');
const told = (days: number, ...pain: HistoryPain[]) => aCheckIn(days, { pain });

describe('pain-high', () => {
  it('speaks at 6 of 10 with region, side and number, now', () => {
    const [finding] = flagged([told(9), told(11, aPain(6))]);
    expect(finding).toMatchObject({ kind: 'pain-high', tier: 'now', points: 3 });
    expect(finding?.sentence).toMatch(/right elbow, inner/i);
    expect(finding?.sentence).toContain('6 of 10');
    expect(finding?.step.kind).toBe('send-to-clinician');
  });
  it.each([
    [5, 0],
    [6, 1],
    [10, 1],
  ])('%i of 10 gives %i findings', (value, count) => {
    expect(flagged([told(11, aPain(value))])).toHaveLength(count);
  });
  it('takes a sore muscle for no joint', () => {
    expect(flagged([told(11, aPain(8, { kind: 'muscle' }))])).toEqual([]);
  });
  it('keeps sides and regions apart', () => {
    const two = [aPain(7), aPain(6, { side: 'left' })];
    expect(new Set(flagged([told(11, ...two)]).map((one) => one.subject.key)).size).toBe(2);
  });
  it('stays until two check-ins of 4 or less', () => {
    const start = told(5, aPain(7));
    expect(flagged([start, told(8, aPain(4))])).toHaveLength(1);
    expect(flagged([start, told(8, aPain(4)), told(10, aPain(5))])).toHaveLength(1);
    expect(flagged([start, told(8, aPain(4)), told(10, aPain(4))])).toHaveLength(0);
  });
  it('is the same for any order of rows', () => {
    const rows = [told(5, aPain(7)), told(8, aPain(4)), told(10, aPain(5))];
    expect(flagged([...rows].reverse())).toEqual(flagged(rows));
  });
});
