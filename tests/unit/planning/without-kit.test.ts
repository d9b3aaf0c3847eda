import { expect, test } from 'vitest';
import { isWithoutKit, lineWithoutKit, planWithoutKit } from '#lib/planning/without-kit.ts';
import { aPlan, aPlanItem } from '#tests/fixtures/history-builders.ts';

test('a week without kit has seven days from the date it is named by', () => {
  const plan = { noKitWeeks: ['2026-12-02'] };
  const days = ['2026-12-01', '2026-12-02', '2026-12-08', '2026-12-09'];
  expect(days.map((date) => isWithoutKit(plan, date))).toEqual([false, true, true, false]);
  expect(isWithoutKit({}, '2026-12-02')).toBe(false);
});

test('a line that needs kit is swapped at the pass mark, or left out; one whose kit is not known stays', () => {
  const item = aPlanItem({ target: 12, support: 'rings', noKitRungId: 'floor' });
  expect(lineWithoutKit(item)).toBe(item);
  expect(lineWithoutKit({ ...item, needsKit: true })).toMatchObject({
    rungId: 'floor',
    sets: item.sets,
    target: null,
    support: null,
  });
  expect(lineWithoutKit({ ...item, needsKit: true, noKitRungId: null })).toBeUndefined();
  const plan = aPlan({ items: [item] });
  expect(planWithoutKit({ ...plan, items: [{ ...item, needsKit: true, noKitRungId: null }] }).items).toEqual(
    [],
  );
});
