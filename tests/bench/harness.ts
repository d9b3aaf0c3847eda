import { cpus, totalmem } from 'node:os';

/** One measured line: a value beside a reference measured in the same run. */
export type BenchRow = {
  name: string;
  value: number;
  unit: string;
  reference: number | null;
  ratio: number | null;
  better: 'lower' | 'higher';
  must: string;
  aim: string;
  sizes: string;
};
export type Bench = {
  name: string;
  what: string;
  /** What has to be there first and is not, as an order; null: nothing. */
  missing?: () => string | null;
  /** Benches that say the same here run in one process and share what they prepare; others have one of their own. */
  shares?: string;
  run: (scale: number, options: { seed?: number }) => Promise<BenchRow[]>;
};

export function medianOf(values: number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

export function machine(): string {
  const cpu = cpus();
  return `${cpu.length} x ${cpu[0]?.model.trim() ?? 'unknown'}, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`;
}

/** Median time of one call in milliseconds, over `rounds` rounds of `calls` calls. */
export function timePerCall(rounds: number, calls: number, work: () => unknown): number {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const start = performance.now();
    for (let call = 0; call < calls; call += 1) work();
    times.push((performance.now() - start) / calls);
  }
  return medianOf(times);
}
