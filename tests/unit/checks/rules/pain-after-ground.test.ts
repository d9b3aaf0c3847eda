import { describe, expect, it } from 'vitest';
import { painAfterGround } from '#lib/checks/rules/pain-after-ground.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain } from '#tests/fixtures/history-builders.ts';

const WRIST = { region: 'wrist-back', side: 'left' } as const;
const wrist = (days: number, value: number, over = {}) =>
  aCheckIn(days, { pain: [aPain(value, WRIST)], ...over });
const onGrass = (days: number) => aCheckIn(days, { ground: 'grass', nothingHurts: false });
const saidOf = (checkIns: HistoryCheckIn[], days = 30, over = {}) =>
  said(theOutcome(judge(painAfterGround, aHistory({ checkIns, ...over }), days)));

describe('pain-after-ground', () => {
  it('speaks of a wrist at 3 the day after grass', () => {
    const finding = theFinding(
      judge(painAfterGround, aHistory({ checkIns: [onGrass(20), wrist(21, 3)] }), 21),
    );
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      evidence: { value: 3, usual: 0, days: 1 },
    });
    expect(finding.sentence).toBe(
      'Left wrist, back: **3 of 10** on Mon 23 Mar, usual 0, 1 day after soft ground on Sun 22 Mar.',
    );
  });
  it('draws the line at 3, and at 2 above usual', () => {
    expect(saidOf([onGrass(20), wrist(21, 2)])).toBe('clear');
    expect(saidOf([onGrass(20), wrist(21, 2)], 30, { client: { under18: true } })).toBe('flagged watch');
    const usual = [0, 2, 4, 6, 8].map((days) => wrist(days, 2));
    expect(saidOf([...usual, onGrass(24), wrist(25, 3)])).toBe('clear');
    expect(saidOf([...usual, onGrass(24), wrist(25, 4)])).toBe('flagged watch');
  });
  it('looks 7 days back for soft ground, the day itself included', () => {
    expect(saidOf([onGrass(20), wrist(27, 4)])).toBe('flagged watch');
    expect(saidOf([onGrass(20), wrist(28, 4)])).toBe('clear');
    expect(saidOf([wrist(24, 4, { ground: 'sand' })])).toBe('flagged watch');
    expect(saidOf([wrist(24, 4)])).toBe('clear');
  });
  it('is about wrists only', () => {
    const elbow = aCheckIn(21, { pain: [aPain(4)] });
    expect(judge(painAfterGround, aHistory({ checkIns: [onGrass(20), elbow] }), 30)).toEqual([]);
  });
  it('goes after two calm check-ins, not after one, not by silence', () => {
    expect(saidOf([onGrass(20), wrist(21, 4), wrist(23, 1)])).toBe('flagged watch');
    expect(saidOf([onGrass(20), wrist(21, 4), wrist(23, 1), wrist(25, 0)])).toBe('clear');
    expect(saidOf([onGrass(20), wrist(21, 4)], 35)).toBe('flagged watch');
    expect(saidOf([onGrass(20), wrist(21, 4)], 36)).toContain('not-enough-history');
  });
});
