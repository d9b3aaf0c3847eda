import { expect, test } from 'vitest';
import { readTyped } from '#app/(client)/_phone/read-typed.ts';

const up = { least: 0, most: 360 };
const both = { least: -360, most: 360 };

test('forgives what people type', () => {
  expect(readTyped(' 7,5 ', 'count', up)).toBe(7.5);
  expect(readTyped('1:30', 'seconds', { least: 0, most: 3_600 })).toBe(90);
  expect(readTyped('12 s', 'seconds', up)).toBe(12);
});

test('a minus counts where values below 0 exist: cm past the floor', () => {
  expect(readTyped('-18 cm', 'degrees', both)).toBe(-18);
  expect(readTyped('−18', 'degrees', both)).toBe(-18);
  expect(Object.is(readTyped('-0', 'degrees', both), 0)).toBe(true);
  expect(readTyped('-18', 'degrees', up)).toBeUndefined();
});

test('out of bounds or no number is not read', () => {
  expect(readTyped('361', 'degrees', both)).toBeUndefined();
  expect(readTyped('-361', 'degrees', both)).toBeUndefined();
  expect(readTyped('--3', 'degrees', both)).toBeUndefined();
  expect(readTyped('', 'degrees', both)).toBeUndefined();
});
