import { expect, test } from 'vitest';
import { checkInInWords, earlierRows } from '#lib/views/phone-earlier.ts';
import { wordsAbout } from '#lib/views/phone-words.ts';
import { aCheckIn, aPain, aRestDay, day } from '#tests/fixtures/history-builders.ts';

test('newest first, deleted ones in their place', () => {
  const deletedAt = `${day(3)}T08:00:00.000Z`;
  const rows = earlierRows([aCheckIn(1), aCheckIn(3)], [{ checkIn: aCheckIn(2), deletedAt }]);
  expect(rows.map((row) => [row.date, row.deletedAt])).toEqual([
    [day(3), null],
    [day(2), deletedAt],
    [day(1), null],
  ]);
});

test('what it was, in one line', () => {
  expect(checkInInWords(aCheckIn(1))).toBe('Session A, 60 min, effort 5');
  expect(checkInInWords(aCheckIn(1, { session: null, effort: null, minutes: null }))).toBe('Training');
  expect(checkInInWords(aRestDay(1))).toBe('No training');
  expect(checkInInWords(aRestDay(1, { pain: [aPain(3, { moment: 'today' })] }))).toBe('Pain told');
  expect(checkInInWords(aRestDay(1, { pain: [aPain(0, { moment: 'today' })] }))).toBe('No training');
});

test('what hurt, with its moment; nothing is said for what was not told', () => {
  const pain = [aPain(6, { region: 'elbow-inner', side: 'right', moment: 'after' })];
  const rows = earlierRows([aCheckIn(1, { pain }), aCheckIn(2), aCheckIn(3, { nothingHurts: false })], []);
  expect(rows.map((row) => row.hurt)).toEqual(['', 'nothing hurt', 'right elbow, inner 6 after']);
});

test('words of the day stand before words on sets; who looked first is told of each check-in', () => {
  const word = {
    id: 'w1',
    checkInId: aCheckIn(1).id,
    date: day(1),
    session: 'A',
    set: { rung: 'Pull-up', side: 'left' as const, number: 2 },
    text: 'Slower down.',
    by: 'Ana',
    at: new Date(`${day(2)}T08:10:00Z`),
    readAt: null,
  };
  const words = [word, { ...word, id: 'w2', set: null, readAt: word.at }];
  const seen = [{ at: `${day(2)}T08:10:00.000Z`, by: 'Ana', checkInId: aCheckIn(1).id }];
  const [newer, older] = earlierRows([aCheckIn(1), aCheckIn(3)], [], { words, seen });
  expect(newer).toMatchObject({ said: [], seen: null });
  expect(older?.said.map(({ id, about, read }) => [id, about, read])).toEqual([
    ['w2', '', true],
    ['w1', 'Pull-up left, set 2', false],
  ]);
  expect(older?.seen).toMatchObject({ by: 'Ana', at: `${day(2)}T08:10:00.000Z` });
  expect(wordsAbout(word)).toBe('Tue 3 Mar, session A, Pull-up left, set 2');
});
