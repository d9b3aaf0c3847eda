import { expect, test } from 'vitest';
import { pipeIntoCheckHistory } from '#tests/bench/check-history/piped.ts';
import { aCheckIn, aHistory, aPain } from '#tests/fixtures/history-builders.ts';

const MB = 1_000_000;
const words = 'The last set was slow. '.repeat(850);
const text = JSON.stringify(
  aHistory({
    client: { id: '@here@' },
    checkIns: Array.from({ length: 50 }, (_, i) =>
      aCheckIn(i, { sets: [], words, pain: i === 49 ? [aPain(7)] : [] }),
    ),
  }),
);
const [before = '', after = ''] = text.split('@here@');
function* lines(count: number) {
  for (let i = 0; i < count; i += 1) yield `${before}client-${i}${after}`;
}

// `npm run bench -- check-history` measures the same at 1,000 and 10,000 histories of a year.
test('300 histories of 1 MB take the memory of 60', async () => {
  expect(text.length).toBeGreaterThan(0.9 * MB);
  const few = await pipeIntoCheckHistory(lines(60));
  const many = await pipeIntoCheckHistory(lines(300));
  expect([few.code, many.code, few.told, many.told]).toEqual([1, 1, '', '']);
  expect(many.findings / few.findings).toBe(5);
  // Holding the other 240 lines would take 230 MiB and more.
  expect(many.peakMb - few.peakMb).toBeLessThan(115);
}, 120_000);
