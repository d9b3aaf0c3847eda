import { spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable } from 'node:stream';

export type Piped = { code: number | null; peakMb: number; seconds: number; findings: number; told: string };

/** Loaded before the command: writes its own peak resident memory, in KiB, to descriptor 3 when it ends. */
const REPORT_PEAK = `data:text/javascript,${encodeURIComponent(
  "import { writeSync } from 'node:fs'; process.on('exit', () => writeSync(3, String(process.resourceUsage().maxRSS)));",
)}`;

/** Runs check-history as a process of its own and pipes `lines` into it at full speed, waiting when it is behind. */
export async function pipeIntoCheckHistory(
  lines: Iterable<string>,
  nodeArgs: readonly string[] = [],
): Promise<Piped> {
  const started = performance.now();
  const child = spawn(
    process.execPath,
    [...nodeArgs, '--import', REPORT_PEAK, '--import', 'tsx', 'lib/handover/check-history.ts'],
    { stdio: ['pipe', 'pipe', 'pipe', 'pipe'] },
  );
  const [stdin, stdout, stderr, report] = child.stdio;
  if (!stdin || !stdout || !stderr || !report) throw new Error('check-history has no pipes');
  stdin.on('error', () => {}); // it ended early: its exit code says so
  const closed = once(child, 'close');
  const told = { out: 0, err: '', peak: '' };
  stdout.on('data', (chunk: Buffer) => {
    for (const byte of chunk) if (byte === 0x0a) told.out += 1;
  });
  stderr.on('data', (chunk: Buffer) => {
    told.err += chunk.toString();
  });
  (report as Readable).on('data', (chunk: Buffer) => {
    told.peak += chunk.toString();
  });
  for (const line of lines) {
    if (child.exitCode !== null || child.signalCode !== null || stdin.destroyed) break;
    if (!stdin.write(`${line}\n`)) await Promise.race([once(stdin, 'drain').catch(() => {}), closed]);
  }
  stdin.end();
  await closed;
  return {
    code: child.exitCode,
    peakMb: Number(told.peak || Number.NaN) / 1024,
    seconds: (performance.now() - started) / 1000,
    findings: told.out,
    told: told.err,
  };
}
