import { expect, test } from 'vitest';
import { type Draft, newDraft } from '#app/(client)/_phone/draft.ts';
import { daysToAsk } from '#app/(client)/_phone/which-day.ts';

const ZONE = 'Europe/Lisbon';
function begun(startedAt: string, date: string, changes: Partial<Draft> = {}): Draft {
  const draft = newDraft({
    kind: 'training',
    date,
    zone: ZONE,
    planVersion: null,
    session: null,
    usualMinutes: null,
    now: new Date(startedAt),
    id: 'x',
  });
  return { ...draft, ...changes };
}

test('begun and filled in on one day, at an hour people train: no question', () => {
  const draft = begun('2026-11-24T18:00:00Z', '2026-11-24');
  expect(daysToAsk(draft, new Date('2026-11-24T23:59:00Z'), ZONE)).toEqual([]);
  expect(
    daysToAsk(begun('2026-11-24T04:00:00Z', '2026-11-24'), new Date('2026-11-24T04:00:00Z'), ZONE),
  ).toEqual([]);
});

test('filled in after midnight, or days later: the day it was begun, or today', () => {
  const draft = begun('2026-11-24T23:30:00Z', '2026-11-24');
  expect(daysToAsk(draft, new Date('2026-11-25T00:10:00Z'), ZONE)).toEqual(['2026-11-24', '2026-11-25']);
  expect(daysToAsk(draft, new Date('2026-11-27T09:00:00Z'), ZONE)).toEqual(['2026-11-24', '2026-11-27']);
});

test('begun in the small hours: today, or the evening before', () => {
  const draft = begun('2026-11-25T01:10:00Z', '2026-11-25');
  expect(daysToAsk(draft, new Date('2026-11-25T03:59:00Z'), ZONE)).toEqual(['2026-11-25', '2026-11-24']);
});

test('the hours are those of the phone, not of Greenwich', () => {
  const draft = begun('2026-11-25T01:10:00Z', '2026-11-25');
  expect(daysToAsk(draft, new Date('2026-11-25T01:10:00Z'), 'Asia/Tokyo')).toEqual([]);
});

test('a day told by hand, and the day of a correction, are not asked about', () => {
  const at = new Date('2026-11-25T01:10:00Z');
  expect(daysToAsk(begun('2026-11-25T01:10:00Z', '2026-11-25', { dayTold: true }), at, ZONE)).toEqual([]);
  expect(daysToAsk(begun('2026-11-25T01:10:00Z', '2026-11-20', { correctsId: 'y' }), at, ZONE)).toEqual([]);
});
