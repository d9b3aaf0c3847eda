import { expect, test } from 'vitest';
import { splitLines } from '#lib/handover/split-lines.ts';

async function linesOf(pieces: (string | Buffer)[], max = 100) {
  async function* chunks() {
    for (const piece of pieces) yield await Promise.resolve(Buffer.from(piece));
  }
  const lines: [number, string][] = [];
  for await (const { number, bytes } of splitLines(chunks(), max))
    lines.push([number, bytes === 'too-long' ? bytes : Buffer.from(bytes).toString()]);
  return lines;
}

test('a line may come in any pieces, and the last needs no newline', async () => {
  expect(await linesOf(['a', 'b\nc', 'd\n', '\ne'])).toEqual([
    [1, 'ab'],
    [2, 'cd'],
    [3, ''],
    [4, 'e'],
  ]);
  expect(await linesOf(['a\n'])).toEqual([[1, 'a']]);
  expect(await linesOf([])).toEqual([]);
});

test('a letter cut between two chunks stays whole', async () => {
  const bytes = Buffer.from('é\n');
  expect(await linesOf([bytes.subarray(0, 1), bytes.subarray(1)])).toEqual([[1, 'é']]);
});

test('a line at the bound is kept, one byte more is not, and the next is read', async () => {
  expect(await linesOf(['123', '45\n1234', '56\n7\n'], 5)).toEqual([
    [1, '12345'],
    [2, 'too-long'],
    [3, '7'],
  ]);
});

test('what is over the bound is let go as it comes', async () => {
  const chunk = Buffer.alloc(1_000_000, 'x');
  async function* chunks() {
    for (let i = 0; i < 400; i += 1) yield await Promise.resolve(Buffer.from(chunk));
  }
  const before = process.memoryUsage().arrayBuffers;
  for await (const { bytes } of splitLines(chunks(), 10)) expect(bytes).toBe('too-long');
  expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(200_000_000);
});
