import { expect, test } from 'vitest';
import { timeline } from '#lib/views/client-timeline.ts';
import { drillSets, setChoices } from '#lib/views/set-words.ts';
import { aCheckIn, aRung, aSet, day, sets } from '#tests/fixtures/history-builders.ts';

const rungs = new Map([['pull-1', aRung()]]);
const word = {
  id: 'w1',
  checkInId: aCheckIn(1).id,
  set: null,
  text: 'Elbows in.',
  by: 'Ana',
  at: new Date(`${day(2)}T08:10:00Z`),
  readAt: null,
};

test('words stand on their check-in, with the set they are about, by whom, when and whether they were read', () => {
  const words = [
    word,
    {
      ...word,
      id: 'w2',
      set: { rung: 'Pull-up', side: 'left' as const, number: 2 },
      readAt: new Date(`${day(2)}T20:05:00Z`),
    },
  ];
  const entries = timeline({ checkIns: [aCheckIn(1), aCheckIn(3)], rungs, seen: [], words, today: day(5) });
  expect(entries.map((entry) => entry.said.length)).toEqual([0, 2]);
  expect(entries[1]?.said).toEqual([
    { id: 'w1', about: '', text: 'Elbows in.', who: 'Ana, Wed 4 Mar 08:10; not read yet' },
    {
      id: 'w2',
      about: 'Pull-up left, set 2',
      text: 'Elbows in.',
      who: 'Ana, Wed 4 Mar 08:10; read Wed 4 Mar 20:05',
    },
  ]);
});

test('a look at one check-in is a look at that one only; a look at the client covers what had been sent', () => {
  const checkIns = [aCheckIn(1), aCheckIn(3), aCheckIn(4)];
  const seenOf = (seen: Parameters<typeof timeline>[0]['seen']) =>
    timeline({ checkIns, rungs, seen, today: day(5) }).map((entry) => [entry.unseen, entry.seen]);
  const at = `${day(5)}T09:30:00.000Z`;
  expect(seenOf([{ at, by: 'Ana', checkInId: aCheckIn(3).id }])).toEqual([
    [true, 'not seen yet'],
    [false, 'seen by Ana, Sat 7 Mar 09:30'],
    [true, 'not seen yet'],
  ]);
  expect(
    seenOf([{ at: `${day(3)}T20:00:00.000Z`, by: 'Ana', checkInId: null }]).map(([unseen]) => unseen),
  ).toEqual([true, false, false]);
});

test('the first look is the one that is told', () => {
  const seen = [
    { at: `${day(3)}T10:00:00.000Z`, by: 'Ben' },
    { at: `${day(2)}T10:00:00.000Z`, by: 'Ana' },
  ];
  const [entry] = timeline({ checkIns: [aCheckIn(1)], rungs, seen, today: day(5) });
  expect(entry?.seen).toBe('seen by Ana, Wed 4 Mar 10:00');
});

test('sets are counted from 1 within drill and side, whatever their index, with what was told', () => {
  const told = [
    aSet({ index: 7, value: 4 }),
    ...sets([5, null], { side: 'left' }),
    aSet({ index: 3, value: null, how: 'as-planned', planned: 6 }),
  ];
  expect(setChoices(drillSets(told, rungs)).map(({ label, side, index }) => [label, side, index])).toEqual([
    ['Pull-up left, set 1: 5', 'left', 0],
    ['Pull-up left, set 2: not done', 'left', 1],
    ['Pull-up, set 1: 6', 'both', 3],
    ['Pull-up, set 2: 4', 'both', 7],
  ]);
});
