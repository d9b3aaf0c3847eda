import { spawnSync } from 'node:child_process';
import { mkdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { buildSync } from 'esbuild';

const folder = join(process.cwd(), '.data');
const file = join(folder, 'check-history-tested.mjs');
let isBuilt = false;

/** The command in one file: read as TypeScript at every start it would take five times as long. */
function command(): string {
  if (isBuilt) return file;
  mkdirSync(folder, { recursive: true });
  const whole = `${file}.${process.pid}`;
  buildSync({
    entryPoints: ['lib/handover/check-history.ts'],
    outfile: whole,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
  });
  renameSync(whole, file); // whoever starts it meanwhile never reads half of it
  isBuilt = true;
  return file;
}

/**
 * Runs the command as a script would: arguments and standard input in, exit code and both outputs out. The test of its
 * memory starts it as `npm run check-history` does.
 */
export function runCheckHistory(args: string[], input: string | Buffer = '') {
  const done = spawnSync(process.execPath, [command(), ...args], { input, encoding: 'utf8' });
  return { code: done.status, out: done.stdout, told: done.stderr };
}

export function rowsIn(out: string): Record<string, unknown>[] {
  return out
    .trim()
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}
