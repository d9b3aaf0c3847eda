import { describe, expect, test } from 'vitest';
import { otherDrills } from '#lib/views/phone-other-drills.ts';
import { aCheckIn, aRung, aSet } from '#tests/fixtures/history-builders.ts';

const ladder = Array.from({ length: 9 }, (_, position) =>
  aRung({ id: `r${position}`, ladderId: 'l', name: `Rung ${position}`, position }),
);
const names = (drills: { rung: string }[]) => drills.map((drill) => drill.rung);

describe('drills to add', () => {
  test('one rung above and three below where the client stands', () => {
    const near = otherDrills(ladder, [{ ladderId: 'l', rungId: 'r5' }], []);
    expect(names(near)).toEqual(['Rung 2', 'Rung 3', 'Rung 4', 'Rung 5', 'Rung 6']);
  });

  test('what was done of late stands first, newest first, with its day, however far away', () => {
    const recent = [
      aCheckIn(0, { date: '2026-11-20', sets: [aSet({ rungId: 'r8' })] }),
      aCheckIn(0, { date: '2026-11-18', sets: [aSet({ rungId: 'r0' }), aSet({ rungId: 'r8' })] }),
    ];
    const drills = otherDrills(ladder, [{ ladderId: 'l', rungId: 'r1' }], recent);
    expect(drills.slice(0, 2)).toMatchObject([
      { rung: 'Rung 8', lastDone: '2026-11-20' },
      { rung: 'Rung 0', lastDone: '2026-11-18' },
    ]);
    expect(names(drills.slice(2))).toEqual(['Rung 1', 'Rung 2']);
  });

  test('tries belong to made and tried only', () => {
    const tries = { sets: 1, target: 8, days: 3, tries: 10 };
    const rungs = [
      aRung({ id: 'a', measure: 'made-tried', pass: tries }),
      aRung({ id: 'b', measure: 'hold', pass: tries }),
    ];
    const standing = rungs.map(({ id, ladderId }) => ({ ladderId, rungId: id }));
    expect(otherDrills(rungs, standing, []).map((drill) => drill.tries)).toEqual([10, null]);
  });

  test('a rung that is not known is left out, and the list ends at 60', () => {
    const many = Array.from({ length: 80 }, (_, at) => aRung({ id: `m${at}` }));
    const recent = [
      aCheckIn(0, { sets: [...many, aRung({ id: 'gone' })].map(({ id }) => aSet({ rungId: id })) }),
    ];
    expect(otherDrills(many, [], recent)).toHaveLength(60);
    expect(otherDrills([], [], recent)).toEqual([]);
  });
});
