import { expect, test } from 'vitest';
import { itemsOnDate, weekInWords } from '#lib/views/phone-week.ts';

type Side = 'both' | 'left' | 'right';
type Item = {
  rungId: string;
  rung: string;
  side: Side;
  sets: number;
  target: number | null;
  support: string | null;
  pairedWith: string | null;
  equipment: string[];
  noKit: { rungId: string; rung: string; eachSide: boolean } | null;
};
const line = (rungId: string, over: Partial<Item> = {}): Item => ({
  rungId,
  rung: rungId,
  side: 'both',
  sets: 5,
  target: 8,
  support: null,
  pairedWith: null,
  equipment: ['hard-floor'],
  noKit: null,
  ...over,
});
const weeks = (over: object) => ({ easyWeeks: [], testWeeks: [], noKitWeeks: [], ...over });
const stand = { rungId: 'lean', rung: 'lean', eachSide: false };

test('an easy week halves the sets, rounded up, from its first to its seventh day', () => {
  const easy = weeks({ easyWeeks: ['2026-12-02'] });
  const sets = (date: string) => itemsOnDate([line('lean')], easy, date).map((item) => item.sets);
  expect(['2026-12-01', '2026-12-02', '2026-12-08', '2026-12-09'].map(sets)).toEqual([[5], [3], [3], [5]]);
});

test('without kit: what needs none stays, the rest is swapped at its pass mark or left out', () => {
  const without = weeks({ noKitWeeks: ['2026-12-02'] });
  const items = [
    line('wall', { equipment: ['hard-floor', 'wall'] }),
    line('pull', { equipment: ['bar'], noKit: stand, support: 'bar-straps' }),
    line('dip', { equipment: ['parallel-bars'] }),
  ];
  expect(itemsOnDate(items, without, '2026-12-01')).toEqual(items);
  expect(itemsOnDate(items, without, '2026-12-05')).toMatchObject([
    { rungId: 'wall', target: 8 },
    { rungId: 'lean', target: null, sets: 5, support: null },
  ]);
});

test('a stand-in stands once, and not beside the same rung of the plan', () => {
  const without = weeks({ noKitWeeks: ['2026-12-02'] });
  const bar = { equipment: ['bar'], noKit: stand };
  const sides = [line('pull', { ...bar, side: 'left' }), line('pull', { ...bar, side: 'right' })];
  expect(itemsOnDate(sides, without, '2026-12-02')).toMatchObject([{ rungId: 'lean', side: 'both' }]);
  expect(itemsOnDate([...sides, line('lean', { sets: 2 })], without, '2026-12-02')).toMatchObject([
    { rungId: 'lean', sets: 2, target: 8 },
  ]);
});

test('the week is said in words; a week as planned says nothing', () => {
  const all = weeks({ easyWeeks: ['2026-12-02'], testWeeks: ['2026-12-09'], noKitWeeks: ['2026-12-09'] });
  expect(weekInWords(all, '2026-12-01')).toEqual([]);
  expect(weekInWords(all, '2026-12-03')).toEqual(['An easy week: half the sets, everything else as it was.']);
  expect(weekInWords(all, '2026-12-15')).toEqual([
    'A test week: show what you can do, rested.',
    'A week without kit: only what needs a floor and a wall.',
  ]);
});
