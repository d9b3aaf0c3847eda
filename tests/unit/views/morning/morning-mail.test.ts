import { describe, expect, it } from 'vitest';
import { type MorningInput, type MorningReason, morningMail } from '#lib/views/morning/morning-mail.ts';

const reason = (over: Partial<MorningReason>): MorningReason => ({
  clientId: 'a',
  kind: 'stalled',
  level: 'watch',
  points: 1,
  tier: 'this-week',
  sentence: 'Tuck planche for **52 days**, usual 24.',
  raisedAt: '2026-11-20T02:00:00.000Z',
  newAt: '2026-11-20T02:00:00.000Z',
  since: '2026-11-19',
  ...over,
});
const PAIN = reason({
  kind: 'pain-high',
  level: 'act',
  points: 3,
  tier: 'now',
  sentence: 'Right elbow, inner **7 of 10** after Tuesday.',
});
const input = (over: Partial<MorningInput> = {}): MorningInput => ({
  today: '2026-11-26',
  lastAt: '2026-11-25T05:00:00.000Z',
  clients: [
    { id: 'a', name: 'Ana Reis' },
    { id: 'b', name: 'Bo Lind' },
    { id: 'c', name: 'Cy Okoro' },
  ],
  reasons: [],
  questions: [],
  night: { localDate: '2026-11-25', endedAt: '05:12', due: 3, done: 3, failed: 0, later: 0, missed: [] },
  covered: [],
  origin: 'https://low-wall.example',
  ...over,
});

it('is the board in words: most urgent first, kinds and names, how the night went', () => {
  const mail = morningMail(
    input({
      reasons: [
        reason({ clientId: 'b' }),
        PAIN,
        reason({ kind: 'load-jump', newAt: '2026-11-26T02:00:00.000Z' }),
        reason({ clientId: 'c', kind: 'step-up-earned', tier: 'good-news' }),
      ],
      questions: [
        { clientId: 'b', askedAt: '2026-11-24T17:00:00.000Z', askedOn: '2026-11-24', danger: false },
        { clientId: 'c', askedAt: '2026-11-25T17:00:00.000Z', askedOn: '2026-11-25', danger: true },
      ],
      covered: [{ name: 'Tomas Vega', to: '2026-11-29' }],
    }),
  );
  expect(mail.subject).toBe('Thursday 26 November: one to answer now, one this week, one with good news');
  expect(mail.text).toBe(`Now (1)
- Ana Reis: pain of 6 or more; load jump (new)

This week (1)
- Bo Lind: stalled (since Thu 19 Nov)

Good news (1)
- Cy Okoro: step up earned (since Thu 19 Nov)

Two questions wait, the oldest since Tue 24 Nov. One with words of a danger sign. https://low-wall.example/replies

The night of Wed 25 Nov ended 05:12, all 3 clients checked.

With the clients whom you cover for: Tomas Vega, until Sun 29 Nov.

The board: https://low-wall.example/

What was measured and said stands on the board only: mails are not encrypted on all of their way.
When this mail comes, and whether: https://low-wall.example/morning-mail
`);
});

it('what is still to come has stood there since it was raised', () => {
  const { text } = morningMail(input({ reasons: [reason({ kind: 'plan-ending', since: '2026-11-27' })] }));
  expect(text).toContain('plan ending (since Fri 20 Nov)');
});

it('tells no number, no place and no word of a client', () => {
  const { text } = morningMail(input({ reasons: [PAIN, reason({})] }));
  expect(text).not.toMatch(/elbow|7 of 10|52|planche/i);
});

it('good news does not hide bad: a step up is left out beside pain of 6 or more', () => {
  const { text } = morningMail(
    input({ reasons: [PAIN, reason({ kind: 'step-up-earned', tier: 'good-news' })] }),
  );
  expect(text).not.toContain('step up');
});

describe('new', () => {
  it.each<[string, boolean, Partial<MorningInput>]>([
    ['nothing at all', false, {}],
    ['a reason that stood there before', false, { reasons: [reason({})] }],
    ['a reason raised since', true, { reasons: [reason({ newAt: '2026-11-26T02:00:00.000Z' })] }],
    [
      'one that came at the very moment of the last',
      false,
      { reasons: [reason({ newAt: '2026-11-25T05:00:00.000Z' })] },
    ],
    ['whatever stands in now, however old', true, { reasons: [PAIN] }],
    [
      'a question asked since',
      true,
      {
        questions: [
          { clientId: 'a', askedAt: '2026-11-25T06:00:00.000Z', askedOn: '2026-11-25', danger: false },
        ],
      },
    ],
    [
      'a question asked before',
      false,
      {
        questions: [
          { clientId: 'a', askedAt: '2026-11-24T06:00:00.000Z', askedOn: '2026-11-24', danger: true },
        ],
      },
    ],
    [
      'a client whom the night missed',
      true,
      {
        night: {
          localDate: '2026-11-25',
          endedAt: '05:12',
          due: 3,
          done: 2,
          failed: 1,
          later: 0,
          missed: ['Bo Lind'],
        },
      },
    ],
    ['no night yet', false, { night: null }],
  ])('%s: %s', (_, isNew, over) => {
    expect(morningMail(input(over)).isNew).toBe(isNew);
  });
});

const NIGHT = { localDate: '2026-11-25', endedAt: null, due: 3, done: 1, failed: 0, later: 0, missed: [] };
it('says whose night is still to come, zone by zone', () => {
  expect(morningMail(input({ night: { ...NIGHT, later: 2 } })).text).toContain(
    'The night of Wed 25 Nov goes on, 1 of 3 clients checked so far; 2 to come at 03:00 where they live.',
  );
  expect(morningMail(input({ night: { ...NIGHT, later: 1 } })).text).toContain(
    'The night of Wed 25 Nov is not finished, 1 of 3 clients checked so far; 1 to come at 03:00 where they live.',
  );
});

it('says what was not found, and what the night did not reach', () => {
  const { subject, text } = morningMail(
    input({
      night: { ...NIGHT, due: 4, done: 1, failed: 2, missed: ['Bo Lind', 'Cy Okoro'] },
    }),
  );
  expect(subject).toBe('Thursday 26 November: nothing to answer');
  expect(text).toContain('The checks found nothing for your 3 clients.');
  expect(text).toContain(
    'The night of Wed 25 Nov is not finished, 1 of 4 clients checked so far. Not checked: Bo Lind, Cy Okoro.',
  );
});
