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
