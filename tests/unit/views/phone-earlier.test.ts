import { expect, test } from 'vitest';
import { checkInInWords, earlierRows } from '#lib/views/phone-earlier.ts';
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
