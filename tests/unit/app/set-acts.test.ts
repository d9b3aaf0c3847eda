import { describe, expect, test } from 'vitest';
import type { SetDraft } from '#app/(client)/_phone/draft.ts';
import { asPlanned, countOpen, OPEN_SET, restNotDone, sameAsLast } from '#app/(client)/_phone/set-acts.ts';

const typed = (value: number, changes: Partial<SetDraft> = {}): SetDraft => ({
  how: 'typed',
  value,
  tried: null,
  faults: [],
  ...changes,
});
const NOT_DONE: SetDraft = { how: 'not-done', value: null, tried: null, faults: [] };
const asked = (...targets: number[]) => targets.map((target) => ({ target, tries: null }));

describe('same as last set', () => {
  test('puts value and tries of the told set into the next open one, never its faults', () => {
    const last = typed(6, { tried: 8, faults: ['came-off'] });
    expect(sameAsLast([last, OPEN_SET, OPEN_SET], asked(8, 8, 8))).toEqual({
      at: 1,
      set: { how: 'typed', value: 6, tried: 8, faults: [] },
    });
  });

  test('what was timed is told again, not timed again', () => {
    expect(sameAsLast([typed(19, { how: 'timed' }), OPEN_SET], asked(20, 20))?.set.how).toBe('typed');
  });

  test('as planned stays as planned only where the plan asks the same', () => {
    const last = typed(8, { how: 'as-planned' });
    expect(sameAsLast([last, OPEN_SET], asked(8, 8))?.set.how).toBe('as-planned');
    expect(sameAsLast([last, OPEN_SET], asked(8, 6))?.set.how).toBe('typed');
    expect(sameAsLast([last, OPEN_SET], asked(8))?.set.how).toBe('typed');
  });

  test('a set not done in between is passed over; an open set before the first told one stays open', () => {
    expect(sameAsLast([OPEN_SET, typed(7), NOT_DONE, OPEN_SET])).toMatchObject({ at: 3, set: { value: 7 } });
  });

  test('nothing told, or nothing open: nothing to copy', () => {
    expect(sameAsLast([OPEN_SET, OPEN_SET])).toBeNull();
    expect(sameAsLast([NOT_DONE, OPEN_SET])).toBeNull();
    expect(sameAsLast([typed(7), typed(7)])).toBeNull();
  });
});

describe('part of the sets', () => {
  test('the rest not done leaves what was told', () => {
    expect(restNotDone([typed(7), OPEN_SET])).toEqual([typed(7), NOT_DONE]);
  });

  test('as planned takes each target and leaves sets beyond the plan open', () => {
    expect(asPlanned([OPEN_SET, typed(4), OPEN_SET, OPEN_SET], asked(8, 8, 6))).toEqual([
      { how: 'as-planned', value: 8, tried: null, faults: [] },
      typed(4),
      { how: 'as-planned', value: 6, tried: null, faults: [] },
      OPEN_SET,
    ]);
  });

  test('only planned sets are counted as not filled in', () => {
    const sets = { a: [OPEN_SET, typed(3), OPEN_SET], extra: [OPEN_SET] };
    expect(countOpen(sets, new Map([['a', asked(8, 8)]]))).toBe(1);
  });
});
