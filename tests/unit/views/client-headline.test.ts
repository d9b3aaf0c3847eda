import { expect, test } from 'vitest';
import { clientHeadline, type HeadlineReason } from '#lib/views/client-headline.ts';

const BASE = {
  name: 'Ada',
  reasons: [],
  daysKnown: 28,
  checkIns: 40,
  standingAs: 'in-training' as const,
  now: ['the week is **1.0 ×** usual', 'no joint hurt in 28 days'],
  ladders: ['On Pull-up, 3 × 5, since 1 May.'],
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
  expect(first).toBe(
    'The checks found nothing new for Ada: the week is **1.0 ×** usual, no joint hurt in 28 days.',
  );
});

test('one reason: where the client stands comes second', () => {
  expect(clientHeadline({ ...BASE, reasons: [reason({})] })).toEqual([
    'The week is **1.5 x** usual.',
    'On Pull-up, 3 × 5, since 1 May.',
  ]);
});

test.each([
  [20, '**20 of 28 days** are known, so most checks are still counting.'],
  [21, 'On Pull-up, 3 × 5, since 1 May.'],
])('%i days known', (daysKnown, second) => {
  expect(clientHeadline({ ...BASE, daysKnown })[1]).toBe(second);
});

test('a reason of several sentences leads with its first; its next one comes second when nothing else is open', () => {
  const sentence =
    'Left elbow: **5 of 10** on Tue 24 Nov, usual 0.5. Loaded most by Dip, 1.4 x the usual fortnight. Also: sore.';
  const lead = reason({ sentence });
  expect(clientHeadline({ ...BASE, reasons: [lead] })).toEqual([
    'Left elbow: **5 of 10** on Tue 24 Nov, usual 0.5.',
    'Loaded most by Dip, 1.4 x the usual fortnight.',
  ]);
  expect(clientHeadline({ ...BASE, reasons: [lead, reason({ kind: 'slipping', points: 0 })] })[1]).toBe(
    'Also open: load 1.5 x.',
  );
});

test.each([
  ['paused', 'Ada is paused: no night checks, and nothing is waited for.'],
  ['left', 'Ada has left: no night checks.'],
  ['invited', 'Ada is invited and has not come in yet.'],
] as const)('%s is said, and is not called nothing new', (standingAs, first) => {
  expect(clientHeadline({ ...BASE, standingAs })).toEqual([first, 'On Pull-up, 3 × 5, since 1 May.']);
});

test('says nothing of load or pain that is not known', () => {
  expect(clientHeadline({ ...BASE, now: [] })[0]).toBe('The checks found nothing new for Ada.');
  expect(clientHeadline({ ...BASE, checkIns: 0 })[0]).toBe('Ada has not checked in yet.');
});

test('what a client wrote is not cut in two', () => {
  const sentence = 'A question has waited **50 h**: “It hurts. Do I go on?”.';
  expect(clientHeadline({ ...BASE, reasons: [reason({ sentence })] })[0]).toBe(sentence);
});
