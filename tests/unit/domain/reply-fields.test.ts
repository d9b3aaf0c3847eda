import { expect, it } from 'vitest';
import { replyFields, unfilledInWords, withName } from '#lib/domain/reply-fields.ts';

it.each([
  ['Stay on [rung] until [date]. [rung] again.', ['rung', 'date']],
  ['nothing to fill', []],
  ['[]', []],
  ['an array[0] is a field too: better asked twice than sent', ['0']],
  ['[over\ntwo lines]', []],
  [`[${'x'.repeat(40)}] [${'y'.repeat(41)}]`, ['x'.repeat(40)]],
  ['[[nested]]', ['nested']],
  ['[ rung ]', ['rung']],
])('%j has the fields %j', (text, fields) => {
  expect(replyFields(text)).toEqual(fields);
});

it('fills the name as it is, also one that looks like a pattern', () => {
  expect(withName('[Name], [name]: stay on [rung].', 'Ana $& Reis')).toBe(
    'Ana $& Reis, Ana $& Reis: stay on [rung].',
  );
});

it('names what is left to fill, in words', () => {
  expect(unfilledInWords('Done.')).toBe('');
  expect(unfilledInWords('On [rung].')).toBe(
    '[rung] is not filled in yet: write over it, or take the square brackets away',
  );
  expect(unfilledInWords('[a] [b] [c]')).toBe(
    '[a], [b] and [c] are not filled in yet: write over them, or take the square brackets away',
  );
});
