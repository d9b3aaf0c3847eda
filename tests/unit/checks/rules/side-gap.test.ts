import { describe, expect, it } from 'vitest';
import { sideGap } from '#lib/checks/rules/side-gap.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import {
  aCheckIn,
  aHistory,
  aPlan,
  aPlanItem,
  aRung,
  aSet,
  START,
} from '#tests/fixtures/history-builders.ts';

const ARM = aRung({
  id: 'arm-6',
  ladderId: 'arm',
  name: 'Two fingers',
  measure: 'hold',
  secondsPerRep: null,
  eachSide: true,
  share: 0.9,
  helpingShare: 0.1,
  pass: { sets: 1, target: 30, days: 3, tries: null },
});
const PLAN = aPlan({
  items: (['left', 'right'] as const).map((side) =>
    aPlanItem({ rungId: 'arm-6', side, sets: 1, target: 30 }),
  ),
});
const PLACED = (['left', 'right'] as const).map((side) => ({
  ladderId: 'arm',
  side,
  rungId: 'arm-6',
  from: START,
}));
function pairs(left: readonly number[], right: readonly number[]): HistoryCheckIn[] {
  return left.map((value, i) =>
    aCheckIn(i * 2, {
      sets: [
        aSet({ rungId: 'arm-6', side: 'left', value, planned: 30 }),
        aSet({ rungId: 'arm-6', side: 'right', value: right[i] ?? 0, planned: 30 }),
      ],
    }),
  );
}
const all = (checkIns: HistoryCheckIn[]) =>
  judge(
    sideGap,
    aHistory({ rungs: [ARM], plans: [PLAN], placements: PLACED, checkIns }),
    checkIns.length * 2,
  );
const flagged = (left: readonly number[], right: readonly number[]) =>
  all(pairs(left, right)).filter((outcome) => outcome.status === 'flagged');
const eight = (value: number) => Array<number>(8).fill(value);

describe('side-gap', () => {
  it('speaks for eight pairs of eight with the left lower', () => {
    // Invented holds; the exact one-sided sign test of 8 of 8 is 1/256 = 0.0039.
    const [finding] = flagged([14, 15, 13, 15, 16, 15, 14, 15], [19, 20, 18, 21, 20, 22, 21, 20]);
    expect(finding).toMatchObject({ level: 'act', tier: 'this-week' });
    expect(finding?.sentence).toMatch(/left/);
    expect(finding?.evidence.p).toBeCloseTo(1 / 256, 3);
  });
  it('mirrors the side when the history is mirrored', () => {
    const [mirrored] = flagged([19, 20, 18, 21, 20, 22, 21, 20], [14, 15, 13, 15, 16, 15, 14, 15]);
    expect(mirrored?.sentence).toMatch(/right .*behind|right/);
    expect(mirrored?.subject.side).toBe('right');
  });
  // Percent difference = (larger - smaller) / larger x 100 (Bishop 2016); watch from 10 %, act from 15 % (own).
  it.each([
    [18.1, 'none'], // 9.5 %
    [18, 'watch'], // 10 %
    [17.1, 'watch'], // 14.5 %
    [17, 'act'], // 15 %
  ])('20 against %d gives %s', (weak, level) => {
    expect(flagged(eight(weak), eight(20))[0]?.level ?? 'none').toBe(level);
  });
  it('needs six untied pairs', () => {
    expect(flagged([15, 15, 15, 15, 15], [20, 20, 20, 20, 20])).toEqual([]);
    expect(flagged([15, 15, 15, 15, 15, 15], [20, 20, 20, 20, 20, 20])).toHaveLength(1);
  });
  it('says nothing of pairs in which both reached the target', () => {
    expect(flagged(eight(30), eight(34))).toEqual([]);
  });
  it('keeps silent while the gap is within the scatter of a side', () => {
    // 21 against 24 is 12.5 %: watch, unless the weak side itself varies by far more than that (Exell 2012).
    expect(flagged(eight(21), eight(24))[0]?.level).toBe('watch');
    expect(flagged([5, 5, 23, 21, 21, 21, 21, 20], eight(24))).toEqual([]);
  });
});
