import { expect, test } from 'vitest';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import { emptyRow, moveRow, sidesApart, tidyPairs, toRows, typedNumber } from '#lib/views/plan-rows.ts';

const item = (over: Partial<PlanLine> = {}): PlanLine => ({
  session: 'A',
  rungId: 'lean',
  side: 'left',
  sets: 4,
  target: 10,
  minutes: null,
  timesPerWeek: 3,
  support: null,
  stopRule: '',
  notTwoDaysRunning: false,
  pairedWith: null,
  noKitRungId: null,
  ...over,
});
const rows = (...items: PlanLine[]) => toRows(items, () => 'ladder');

test('left and right alike stand in one row; another dose or rung keeps them apart', () => {
  expect(rows(item(), item({ side: 'right' })).map(({ side }) => side)).toEqual(['both']);
  expect(rows(item(), item({ side: 'right', sets: 3 })).map(({ side }) => side)).toEqual(['left', 'right']);
  expect(rows(item(), item({ side: 'right', rungId: 'other' }))).toHaveLength(2);
  expect(rows(item(), item({ side: 'right', session: 'B' }))).toHaveLength(2);
});

test('a row of both sides parts into two with keys of their own; one of a side stays', () => {
  const [both] = rows(item(), item({ side: 'right' }));
  const parted = sidesApart([both ?? emptyRow(0, 'A'), emptyRow(7, 'A')], 0);
  expect(parted.map(({ key, side }) => [key, side])).toEqual([
    [0, 'left'],
    [8, 'right'],
    [7, 'both'],
  ]);
  expect(sidesApart(parted, 0)).toEqual(parted);
});

test('a row moves within its session only, to any place, and stays at an end', () => {
  const all = [emptyRow(0, 'A'), emptyRow(1, 'B'), emptyRow(2, 'A'), emptyRow(3, 'A')];
  const keys = (moved: typeof all) => moved.map(({ key }) => key);
  expect(keys(moveRow(all, 0, 1))).toEqual([2, 1, 0, 3]);
  expect(keys(moveRow(all, 0, 2))).toEqual([2, 1, 3, 0]);
  expect(keys(moveRow(all, 3, 0))).toEqual([3, 1, 0, 2]);
  expect(keys(moveRow(all, 1, -1))).toEqual([0, 1, 2, 3]);
  expect(keys(moveRow(all, 3, 3))).toEqual([0, 1, 2, 3]);
  expect(keys(moveRow(all, 9, 0))).toEqual([0, 1, 2, 3]);
});

test('a pyramid goes with its other half, and stays with it', () => {
  const half = (key: number, rungId: string, pairedWith: string, session = 'A') => ({
    ...emptyRow(key, session),
    rungId,
    pairedWith,
  });
  const both = [half(0, 'easy', 'hard'), half(1, 'hard', 'easy')];
  expect(tidyPairs(both)).toEqual(both);
  expect(tidyPairs([half(0, 'easy', 'hard')])).toMatchObject([{ pairedWith: '' }]);
  expect(tidyPairs([half(0, 'easy', 'hard'), half(1, 'hard', 'easy', 'B')])).toMatchObject([
    { pairedWith: '' },
    { pairedWith: '' },
  ]);
});

test('typed numbers take a comma; empty is nothing, words are no number', () => {
  expect([' 2,5 ', '', 'five'].map(typedNumber)).toEqual([2.5, null, undefined]);
});
