import { spawnSync } from 'node:child_process';

/** Runs the command as a script would: arguments and standard input in, exit code and both outputs out. */
export function runCheckHistory(args: string[], input: string | Buffer = '') {
  const command = ['--import', 'tsx', 'lib/handover/check-history.ts', ...args];
  const done = spawnSync(process.execPath, command, { input, encoding: 'utf8' });
  return { code: done.status, out: done.stdout, told: done.stderr };
}

export function rowsIn(out: string): Record<string, unknown>[] {
  return out
    .trim()
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line));
}
