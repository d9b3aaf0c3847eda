import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { addUnsent, loadUnsent } from '#app/(client)/_phone/kept.ts';
import { sendUnsent } from '#app/(client)/_phone/send-unsent.ts';
import type { Body } from '#app/(client)/_phone/to-body.ts';

const CLIENT = 'client';
const body = (id: string) => ({ id, date: '2026-11-24' }) as Body;

beforeEach(() => {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
    removeItem: (key: string) => kept.delete(key),
  });
  vi.stubGlobal('window', new EventTarget());
  vi.stubGlobal('navigator', {});
  addUnsent(CLIENT, body('one'), new Date());
  addUnsent(CLIENT, body('two'), new Date());
});
afterEach(() => {
  vi.unstubAllGlobals();
});

it('a check-in stays on the phone until the consent to a new text is given, and is sent then', async () => {
  const answers = [428];
  const asked = vi.fn(async () => new Response('{}', { status: answers.shift() ?? 201 }));
  vi.stubGlobal('fetch', asked);
  await sendUnsent(CLIENT);
  expect(asked).toHaveBeenCalledTimes(1); // the others would be answered alike
  expect(loadUnsent(CLIENT)).toMatchObject([
    { body: { id: 'one' }, problem: null, needsConsent: true },
    { body: { id: 'two' }, problem: null },
  ]);
  await sendUnsent(CLIENT);
  expect(loadUnsent(CLIENT)).toEqual([]);
});
