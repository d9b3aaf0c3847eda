import { makeClient } from '../detect/generator.ts';
import { WORLDS } from '../detect/worlds.ts';
import type { Bench, BenchRow } from '../harness.ts';
import { type Piped, pipeIntoCheckHistory } from './piped.ts';

const DISTINCT = 40;
const DAYS = 365;

/** Histories of one year as JSON around the client's id, so that each can be sent again under a new one. */
function yearsOfHistory(seed: number): [string, string][] {
  return Array.from({ length: DISTINCT }, (_, i) => {
    const world = WORLDS[i % WORLDS.length];
    if (!world) throw new Error('no world');
    const { history } = makeClient(world, undefined, seed + i, DAYS);
    const text = JSON.stringify({ ...history, client: { ...history.client, id: '@here@' } });
    const [before = '', after = ''] = text.split('@here@');
    return [before, after];
  });
}

function* linesOf(years: [string, string][], count: number): Generator<string> {
  for (let i = 0; i < count; i += 1) {
    const [before, after] = years[i % years.length] ?? ['', ''];
    yield `${before}client-${i}${after}`;
  }
}

async function measured(years: [string, string][], count: number): Promise<Piped> {
  const done = await pipeIntoCheckHistory(linesOf(years, count));
  if (done.code !== 0 && done.code !== 1)
    throw new Error(`check-history ended with ${done.code}: ${done.told}`);
  return done;
}

export const checkHistoryBench: Bench = {
  name: 'check-history',
  what: 'memory of check-history with 1,000 and 10,000 histories of a year on standard input',
  run: async (scale: number, options: { seed?: number } = {}) => {
    const years = yearsOfHistory(options.seed ?? 1);
    const [few, many] = [Math.max(50, Math.round(1_000 * scale)), Math.max(500, Math.round(10_000 * scale))];
    const small = await measured(years, few);
    const large = await measured(years, many);
    const kb =
      years.reduce((sum, [before, after]) => sum + before.length + after.length, 0) / DISTINCT / 1000;
    const memory: BenchRow = {
      name: 'check-history memory',
      value: large.peakMb,
      unit: 'MiB peak resident',
      reference: small.peakMb,
      ratio: large.peakMb / small.peakMb,
      better: 'lower',
      must: 'ratio 1.2',
      aim: 'ratio 1.1',
      sizes: `${many} histories beside ${few}, ${DAYS} days, ${Math.round(kb)} kB each on average, ${large.findings} findings`,
    };
    const time: BenchRow = {
      name: 'check-history time',
      value: (large.seconds / many) * 1000,
      unit: 'ms a history',
      reference: (small.seconds / few) * 1000,
      ratio: large.seconds / many / (small.seconds / few),
      better: 'lower',
      must: '-',
      aim: '-',
      sizes: `${Math.round(large.seconds)} s for ${many}, reading and schema included`,
    };
    return [memory, time];
  },
};
