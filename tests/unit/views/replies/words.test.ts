import { describe, expect, it } from 'vitest';
import { answeringInWords } from '#lib/views/replies/answering-words.ts';
import { recipients } from '#lib/views/replies/recipients.ts';
import { repliesHeadline } from '#lib/views/replies/replies-headline.ts';

describe('answering hours in words', () => {
  const hours = (days: number[]) =>
    answeringInWords({ zone: 'America/Sao_Paulo', days, from: '09:00', to: '17:00' });
  it.each([
    [[1, 2, 3, 4, 5], 'Monday to Friday 09:00 to 17:00, Sao Paulo time'],
    [[5, 1, 3], 'Monday, Wednesday, Friday 09:00 to 17:00, Sao Paulo time'],
    [[1, 2, 4, 5, 6], 'Monday, Tuesday, Thursday to Saturday 09:00 to 17:00, Sao Paulo time'],
    [[7], 'Sunday 09:00 to 17:00, Sao Paulo time'],
  ])('%j', (days, words) => {
    expect(hours(days)).toBe(words);
  });
  it('says so when none are set', () => {
    expect(answeringInWords(undefined)).toContain('no answering hours are set');
    expect(hours([])).toContain('no answering hours are set');
  });
});

it.each([
  [[], 0, 'No question waits.'],
  [[4], 0, 'One question waits: 4 h in answering hours.'],
  [[30, 4], 0, 'Two questions wait, the longest 30 h in answering hours.'],
  [[4, 30], 3, 'Five questions wait, the longest 30 h in answering hours.'],
])('the headline of %j and %i more', (hours, more, words) => {
  const waiting = hours.map((one) => ({ hours: one, waited: `${one} h in answering hours` }));
  expect(repliesHeadline(waiting, more)).toBe(words);
});

describe('recipients', () => {
  const row = (over: Partial<Parameters<typeof recipients>[0][number]>) => ({
    id: 'a',
    name: 'Ana Reis',
    standing: 'in-training' as const,
    coachId: 'ines',
    unseenDays: 3,
    skills: ['Handstand'],
    kinds: [],
    stands: [{ ladderId: 'pull', rungId: 'pull-2' }],
    ...over,
  });
  const rows = [
    row({ id: 'z', name: 'Zoe Bell', standing: 'left' }),
    row({ id: 'b', name: 'Bo Lind', standing: 'paused', unseenDays: 1, kinds: ['stalled'], stands: [] }),
    row({}),
  ];
  const ids = (filter: Parameters<typeof recipients>[1]) => recipients(rows, filter).map(({ id }) => id);
  it.each([
    [{}, ['a', 'b']],
    [{ standing: 'left' as const }, []],
    [{ skill: 'Planche' }, []],
    [{ ladder: 'pull' }, ['a']],
    [{ ladder: 'pull', rung: 'pull-1' }, []],
    [{ reason: 'stalled' as const }, ['b']],
    [{ unseen: 3 }, ['a']],
    [{ unseen: 4 }, []],
    [{ q: 'LIN' }, ['b']],
  ])('%j', (filter, shown) => {
    expect(ids(filter)).toEqual(shown);
  });
  it('say where they stand and when somebody looked', () => {
    expect(recipients(rows, {}).map(({ about }) => about)).toEqual([
      'looked at 3 days ago',
      'paused, looked at 1 day ago',
    ]);
  });
});
