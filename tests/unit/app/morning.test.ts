import { expect, test } from 'vitest';
import { withMorning } from '#app/(client)/_phone/morning.ts';
import type { MorningPlace } from '#lib/views/phone-morning.ts';

const elbow: MorningPlace = { region: 'elbow-inner', side: 'right', kind: 'joint', value: 5 };
const told = { group: 'elbow', region: 'elbow-inner', side: 'right', kind: 'joint', usual: null } as const;

test('a tap tells this morning of the kind it was yesterday; another one changes it; the usual is not answered for them', () => {
  const once = withMorning([], elbow, 3);
  expect(once).toEqual([{ ...told, scores: { morning: 3 } }]);
  expect(withMorning(once, elbow, 0)).toEqual([{ ...told, scores: { morning: 0 } }]);
});

test('taken back it leaves nothing, or what else was told of the place', () => {
  expect(withMorning([{ ...told, scores: { morning: 3 } }], elbow, null)).toEqual([]);
  expect(withMorning([{ ...told, scores: { morning: 3, today: 2 } }], elbow, null)).toEqual([
    { ...told, scores: { today: 2 } },
  ]);
  expect(withMorning([], elbow, null)).toEqual([]);
});

test('other places, and the other side, stay as they are', () => {
  const left = { ...told, side: 'left', scores: { morning: 1 } } as const;
  expect(withMorning([left], elbow, 4)).toEqual([left, { ...told, scores: { morning: 4 } }]);
});
