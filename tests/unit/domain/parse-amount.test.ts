import { describe, expect, test } from 'vitest';
import { parseAmount } from '#lib/domain/parse-amount.ts';

describe('a number as people type it', () => {
  test.each([
    ['7,5', 'kg', 7.5],
    ['7.5', 'kg', 7.5],
    ['7.5 kg', 'kg', 7.5],
    [' 7,5kg ', 'kg', 7.5],
    ['1:30', 'seconds', 90],
    ['12 s', 'seconds', 12],
    ['12s', 'seconds', 12],
    ['2 min', 'seconds', 120],
    ['1:30', 'minutes', 90],
    ['62 min', 'minutes', 62],
    ['12', 'count', 12],
    ['12 reps', 'count', 12],
    ['45°', 'degrees', 45],
    ['0', 'count', 0],
  ] as const)('"%s" as %s is %d', (text, kind, value) => {
    expect(parseAmount(text, kind)).toBe(value);
  });

  test.each([
    '1e9',
    '0x1F',
    '１２',
    '1.000,5',
    '-3',
    '',
    ' ',
    'NaN',
    'Infinity',
    '7.',
    '.5',
    '1:75',
    '12 kg kg',
    '99999999',
  ])('"%s" is refused', (text) => {
    expect(parseAmount(text, 'seconds')).toBeUndefined();
  });

  test('a unit of another quantity is refused', () => {
    expect(parseAmount('12 kg', 'seconds')).toBeUndefined();
    expect(parseAmount('1:30', 'count')).toBeUndefined();
  });
});
