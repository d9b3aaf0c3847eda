import { expect, it } from 'vitest';
import { clientAddress } from '#lib/edge/client-address.ts';

const from = (value: string, trust: boolean) =>
  clientAddress(new Headers({ 'x-forwarded-for': value }), trust);

it('an address counts only behind a trusted proxy, and only the one it added', () => {
  expect(from('10.1.1.1', false)).toBeNull();
  expect(from('10.1.1.1', true)).toBe('10.1.1.1');
  expect(from('6.6.6.6, 10.1.1.1', true)).toBe('10.1.1.1');
  expect(from('2001:db8::1', true)).toBe('2001:db8::1');
  expect(from('invented', true)).toBeNull();
  expect(clientAddress(new Headers(), true)).toBeNull();
});
