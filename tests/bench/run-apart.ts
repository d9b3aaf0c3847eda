import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import type { Bench, BenchRow } from './harness.ts';

/** Benches that share a process, together, in their order. */
export function groupsOf(benches: readonly Bench[]): Bench[][] {
  const groups = new Map<string, Bench[]>();
  for (const bench of benches) {
    const key = bench.shares ?? bench.name;
    groups.set(key, [...(groups.get(key) ?? []), bench]);
  }
  return [...groups.values()];
}

/**
 * Runs each group in a process of its own: a server that one bench had, its connections and what was compiled for it are
 * not in the next one's way. One that fails has said why and leaves its rows out; the others run.
 */
export function runApart(
  groups: readonly Bench[][],
  options: string[],
): { rows: BenchRow[]; failed: string[] } {
  const rows: BenchRow[] = [];
  const failed: string[] = [];
  for (const group of groups) {
    const names = group.map(({ name }) => name);
    const { status, stdout } = spawnSync(
      process.execPath,
      [...process.execArgv, join(import.meta.dirname, 'main.ts'), ...names, '--json', ...options],
      { stdio: ['ignore', 'pipe', 'inherit'], encoding: 'utf8', maxBuffer: 64 * 2 ** 20 },
    );
    if (status === 0) rows.push(...JSON.parse(stdout));
    else failed.push(...names);
  }
  return { rows, failed };
}
