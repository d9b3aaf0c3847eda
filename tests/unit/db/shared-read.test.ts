import { expect, it } from 'vitest';
import { sharedRead } from '#lib/db/shared-read.ts';

/** Readings that end when they are told to, each with what had been written when it began. */
function desk(patienceMs?: number) {
  let written = 0;
  const begun: { value: number; end: () => void; fail: (why: Error) => void }[] = [];
  const share = sharedRead<number>(patienceMs);
  const ask = (key = 'team') =>
    share(
      key,
      () =>
        new Promise<number>((resolve, reject) => {
          const value = written;
          begun.push({ value, end: () => resolve(value), fail: reject });
        }),
    );
  const write = () => {
    written += 1;
  };
  return { ask, begun, write };
}

const soon = () => new Promise((resolve) => setTimeout(resolve));

it('reads once for all who asked before it began', async () => {
  const { ask, begun } = desk();
  const all = Array.from({ length: 20 }, () => ask());
  await soon();
  expect(begun).toHaveLength(1);
  begun[0]?.end();
  expect(await Promise.all(all)).toEqual(Array(20).fill(0));
});

it('never gives what began to be read before the asking', async () => {
  const { ask, begun, write } = desk();
  const first = ask();
  await soon();
  write();
  const late = [ask(), ask(), ask()];
  await soon();
  expect(begun).toHaveLength(1);
  begun[0]?.end();
  expect(await first).toBe(0);
  await soon();
  expect(begun).toHaveLength(2);
  begun[1]?.end();
  expect(await Promise.all(late)).toEqual([1, 1, 1]);
});

it('keeps teams apart, and forgets a reading that is over', async () => {
  const { ask, begun, write } = desk();
  const [one, other] = [ask('one'), ask('other')];
  await soon();
  expect(begun).toHaveLength(2);
  for (const reading of begun) reading.end();
  await Promise.all([one, other]);
  write();
  const again = ask('one');
  await soon();
  begun[2]?.end();
  expect(await again).toBe(1);
});

it('fails for those who wait for it, and the next reading goes on', async () => {
  const { ask, begun } = desk();
  const failing = [ask(), ask()];
  await soon();
  const next = ask();
  begun[0]?.fail(new Error('the connection is gone'));
  for (const one of failing) await expect(one).rejects.toThrow('the connection is gone');
  await soon();
  begun[1]?.end();
  expect(await next).toBe(0);
});

it('waits for a reading that hangs only so long', async () => {
  const { ask, begun, write } = desk(20);
  void ask(); // never ends
  await soon();
  write();
  const next = ask();
  await expect.poll(() => begun.length).toBe(2);
  begun[1]?.end();
  expect(await next).toBe(1);
});
