import { expect, it } from 'vitest';
import type { Stay } from '#lib/checks/replay/replay-reasons.ts';
import { addParts, replayInWords, replayPart } from '#lib/views/replay-words.ts';

const stay = (day: string | null, over: Partial<Stay> = {}): Stay => ({
  kind: 'stalled',
  key: 'a',
  label: 'Tuck planche',
  short: 'stalled',
  from: day ?? '2026-10-01',
  until: null,
  onBoard: day,
  tier: 'this-week',
  level: 'watch',
  ...over,
});
const sums = { reasons: 0, clientMornings: 0 };
const part = (changes: Parameters<typeof replayPart>[0]['changes'], over = {}) =>
  replayPart({ total: 2, next: null, clients: 1, before: sums, after: sums, changes, ...over });
const who = { clientId: 'c', name: 'Maren' };

it('gives each change its client, its reason in words, and the days it came and would come', () => {
  const { lines } = part([
    { ...who, what: 'gone', stay: stay('2026-10-05') },
    { ...who, what: 'came', stay: stay('2026-10-06', { label: '' }) },
    { ...who, what: 'moved', stay: stay('2026-10-09'), was: stay('2026-10-07'), days: 2 },
    {
      ...who,
      what: 'weighs-differently',
      stay: stay('2026-10-07', { level: 'act', tier: 'today' }),
      was: stay('2026-10-07'),
    },
  ]);
  expect(lines.map(({ reason, was, is }) => [reason, was, is])).toEqual([
    ['stalled, Tuck planche', '5 Oct', 'not at all'],
    ['stalled', 'not at all', '6 Oct'],
    ['stalled, Tuck planche', '7 Oct', '9 Oct'],
    ['stalled, Tuck planche', '7 Oct, This week, watch', '7 Oct, Today, act'],
  ]);
  expect(new Set(lines.map(({ key }) => key)).size).toBe(4);
});

it('adds parts up and says what they come to', () => {
  const one = part([{ ...who, what: 'gone', stay: stay('2026-10-05') }], {
    next: 1,
    before: { reasons: 3, clientMornings: 90 },
    after: { reasons: 2, clientMornings: 45 },
  });
  const two = part([], {
    before: { reasons: 1, clientMornings: 45 },
    after: { reasons: 1, clientMornings: 45 },
  });
  const both = addParts(one, two);
  expect(both).toMatchObject({ clients: 2, next: null });
  expect(replayInWords(both)).toBe(
    'The last 90 nights of 2 clients: 4 reasons that go by these numbers came onto the board; with the new numbers 3 (1 would not have come). On an ordinary morning 1.5 clients had one of them; it would be 1 client.',
  );
  expect(replayInWords(part([]))).toContain('with the new numbers 0, the same ones.');
});
