import { describe, expect, it } from 'vitest';
import type { LadderState, SwapState } from '#lib/planning/ladders/ladder-state.ts';
import { refreshSwaps } from '#lib/planning/ladders/refresh-swaps.ts';
import type { SwapRung } from '#lib/planning/swaps.ts';
import { swapsOf } from '#lib/planning/swaps.ts';
import { DRILL, ladderOf, rungOf } from './ladder-builders.ts';

// Two ladders of one part. Own: easy 0.2, middle 0.5, hard 0.8 of the wrist. Other: soft 0.3 of the wrist, on rings.
const WRIST = 'wrist-back';
const own = ladderOf([rungOf('easy'), rungOf('middle'), rungOf('hard')], { id: 'own' });
const weighted = (state: LadderState, weights: Record<string, number>): LadderState => ({
  ...state,
  drills: state.drills.map((drill) => ({
    ...drill,
    equipment: ['rings'],
    weights: { [WRIST]: weights[drill.id.replace('drill-', '')] ?? 0 },
  })),
});
const before = weighted(own, { easy: 0.2, middle: 0.5, hard: 0.8 });
const asRung = (id: string, ladderId: string, position: number, weight: number): SwapRung => ({
  ...DRILL,
  id,
  ladderId,
  part: own.part,
  skill: own.skill,
  position,
  name: id,
  family: own.family,
  equipment: ['rings'],
  weights: { [WRIST]: weight },
});
const team = [
  asRung('easy', 'own', 1, 0.2),
  asRung('middle', 'own', 2, 0.5),
  asRung('hard', 'own', 3, 0.8),
  asRung('soft', 'other', 1, 0.3),
];
const swap = (insteadId: string, why: string, over: Partial<SwapState> = {}): SwapState => ({
  insteadId,
  tissue: WRIST,
  support: null,
  why,
  ...over,
});
const FIRST = new Map<string, SwapState[]>();
for (const { rungId, position: _position, ...one } of swapsOf(team))
  FIRST.set(rungId, [...(FIRST.get(rungId) ?? []), one]);
const refreshed = (after: LadderState, kept = FIRST) =>
  refreshSwaps({ before, after, rungs: team, ladderOrder: ['own', 'other'], kept });
const insteadOf = (changed: Map<string, SwapState[]>, rungId: string) =>
  changed.get(rungId)?.map((one) => one.insteadId);

describe('swaps after an edit', () => {
  it('start from what a new team gets', () => {
    expect(FIRST.get('hard')?.map((one) => one.insteadId)).toEqual(['easy', 'soft']);
    expect(FIRST.get('middle')?.map((one) => one.insteadId)).toEqual(['easy']);
    expect(FIRST.get('soft')).toBeUndefined();
    expect(refreshed(before).size).toBe(0);
  });

  it('follow the weight of a drill, on the rung itself, on its ladder and on the others of the part', () => {
    const lighter = refreshed(weighted(own, { easy: 0.1, middle: 0.4, hard: 0.8 }));
    expect(insteadOf(lighter, 'hard')).toEqual(['middle', 'easy', 'soft']);
    expect(insteadOf(lighter, 'soft')).toEqual(['easy']);
    expect(lighter.has('middle')).toBe(false);
    const heavier = refreshed(weighted(own, { easy: 0.45, middle: 0.5, hard: 0.8 }));
    expect(insteadOf(heavier, 'hard')).toEqual(['soft']);
    expect(insteadOf(heavier, 'middle')).toEqual([]);
    expect(insteadOf(heavier, 'easy')).toBeUndefined();
  });

  it('follow a rung retired, a ladder retired, a ladder moved to another part', () => {
    const retired = refreshed({
      ...before,
      rungs: before.rungs.map((rung) => (rung.id === 'easy' ? { ...rung, retired: true } : rung)),
    });
    expect(insteadOf(retired, 'hard')).toEqual(['soft']);
    expect(insteadOf(retired, 'middle')).toEqual([]);
    expect(insteadOf(refreshed({ ...before, part: 'Another' }), 'hard')).toEqual(['easy']);
    expect(insteadOf(refreshed({ ...before, retired: true }), 'hard')).toEqual([]);
  });

  it('of a new rung are worked out', () => {
    const added = weighted(
      ladderOf([rungOf('easy'), rungOf('middle'), rungOf('hard'), rungOf('top')], { id: 'own' }),
      { easy: 0.2, middle: 0.5, hard: 0.8, top: 1 },
    );
    expect(insteadOf(refreshed(added), 'top')).toEqual(['middle', 'easy', 'soft']);
  });

  it('leave what a coach added, took away, ordered or said, and take only what went out of it', () => {
    const kept = new Map([...FIRST, ['hard', [swap('far', 'mine'), swap('soft', 'I prefer it')]]]);
    expect(refreshed(before, kept).size).toBe(0);
    const lighter = refreshed(weighted(own, { easy: 0.1, middle: 0.4, hard: 0.8 }), kept);
    expect(lighter.get('hard')).toEqual([
      swap('far', 'mine'),
      swap('soft', 'I prefer it'),
      swap('middle', 'an easier rung'),
    ]);
    const less = refreshed(weighted(own, { easy: 0.2, middle: 0.5, hard: 0.5 }), kept);
    expect(less.get('hard')).toEqual([swap('far', 'mine')]);
  });

  it('keep the words of a coach where the list is as it was found', () => {
    const kept = new Map([...FIRST, ['hard', [swap('easy', 'slowly'), swap('soft', 'x')]]]);
    expect(refreshed(before, kept).size).toBe(0);
    expect(
      refreshed(weighted(own, { easy: 0.1, middle: 0.4, hard: 0.8 }), kept)
        .get('hard')
        ?.map((one) => one.why),
    ).toEqual(['an easier rung', 'slowly', 'x']);
  });
});
