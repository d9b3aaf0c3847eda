import { expect, test } from 'vitest';
import { timeline } from '#lib/views/client-timeline.ts';
import { aCheckIn, aPain, day } from '#tests/fixtures/history-builders.ts';

test('what the client deleted stands in its place, whole, and says that it counts no more', () => {
  const pain = [aPain(6, { region: 'elbow-inner', side: 'right', moment: 'after' })];
  const deleted = [
    { checkIn: aCheckIn(2, { words: 'typed wrong', pain }), deletedAt: `${day(3)}T23:30:00.000Z` },
  ];
  const input = { checkIns: [aCheckIn(1), aCheckIn(3)], rungs: new Map(), seen: [], today: day(5) };
  const entries = timeline({ ...input, deleted });
  expect(entries.map((entry) => entry.deleted !== '')).toEqual([false, true, false]);
  expect(entries[1]).toMatchObject({ words: 'typed wrong', facts: expect.stringContaining('6 of 10') });
  expect(entries[1]?.deleted).toMatch(/^deleted by the client \w/);
  expect(timeline(input)).toHaveLength(2);
});

test('a corrected check-in stands with what it was before, the first version first', () => {
  const sent = (id: string, value: number, hour: string) =>
    aCheckIn(3, { id, words: `version ${id}`, sentAt: `${day(3)}T${hour}:00:00.000Z`, effort: value });
  const [entry] = timeline({
    checkIns: [sent('c', 7, '20')],
    corrected: [
      { checkIn: sent('b', 6, '19'), correctedBy: 'c' },
      { checkIn: sent('a', 5, '18'), correctedBy: 'b' },
      { checkIn: sent('x', 5, '18'), correctedBy: 'another' },
    ],
    rungs: new Map(),
    seen: [],
    today: day(5),
  });
  expect(entry?.before.map((old) => old.words)).toEqual(['version a', 'version b']);
  expect(entry?.before[0]).toMatchObject({ id: 'a' });
  expect(entry?.before[0]?.about).toContain('effort 5 of 10');
});
