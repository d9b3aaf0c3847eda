import { expect, test } from 'vitest';
import { clientHeadline, type HeadlineReason } from '#lib/views/client-headline.ts';

const BASE = {
  name: 'Ada',
  reasons: [],
  daysKnown: 28,
  checkIns: 40,
  standing: ['Pull-up: on 3 x 5 since 1 May'],
};
const reason = (over: Partial<HeadlineReason>): HeadlineReason => ({
  kind: 'load-jump',
  level: 'watch',
  points: 1,
  tier: 'this-week',
  sentence: 'The week is **1.5 x** usual',
  short: 'load 1.5 x',
  raisedAt: '2026-06-01T03:00:00.000Z',
  ...over,
});

test('the most urgent reason leads, the others follow in short words', () => {
  const high = reason({
    kind: 'pain-high',
    level: 'act',
    points: 3,
    tier: 'now',
    sentence: 'Right elbow **6 of 10**.',
    short: 'pain 6',
  });
  expect(clientHeadline({ ...BASE, reasons: [reason({}), high] })).toEqual([
    'Right elbow **6 of 10**.',
    'Also open: load 1.5 x.',
  ]);
});

test('a note does not lead', () => {
  const [first] = clientHeadline({ ...BASE, reasons: [reason({ level: 'note', tier: null })] });
  expect(first).toBe('The checks found nothing new for Ada.');
});

test('one reason: where the client stands comes second', () => {
  expect(clientHeadline({ ...BASE, reasons: [reason({})] })).toEqual([
    'The week is **1.5 x** usual.',
    'Pull-up: on 3 x 5 since 1 May.',
  ]);
});

test.each([
  [20, '**20 of 28 days** are known, so most checks are still counting.'],
  [21, 'Pull-up: on 3 x 5 since 1 May.'],
])('%i days known', (daysKnown, second) => {
  expect(clientHeadline({ ...BASE, daysKnown })[1]).toBe(second);
});
