import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { QueuePlace } from '#lib/jobs/backend.ts';
import { WORKER_ARGS } from '#lib/launch/worker-args.mjs';
import type { Place } from './place.ts';

const root = join(import.meta.dirname, '../../..');

export type Workers = {
  /** The largest peak of resident memory of one process so far, in MB; null where the system does not tell. */
  peakMb: () => number | null;
  pids: (number | undefined)[];
  stop: () => Promise<void>;
};

/** Starts `count` worker processes as `npm start` does, on one queue, and waits until they are ready. */
export async function startWorkers(
  place: Pick<Place, 'environment'>,
  queue: QueuePlace,
  count: number,
): Promise<Workers> {
  const environment = { ...place.environment, ...(queue.kind === 'redis' && { REDIS_URL: queue.url }) };
  const children: ChildProcess[] = [];
  for (let at = 0; at < count; at += 1) children.push(await start(environment));
  return {
    pids: children.map(({ pid }) => pid),
    peakMb: () => {
      const peaks = children.map(peakOf);
      return peaks.includes(null) ? null : Math.max(...peaks.map(Number));
    },
    stop: async () => {
      await Promise.all(children.map(end));
    },
  };
}

function start(environment: NodeJS.ProcessEnv): Promise<ChildProcess> {
  const child = spawn(process.execPath, WORKER_ARGS, {
    cwd: root,
    env: environment,
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'], // it ends when this process does, however that ends
  });
  return new Promise((done, fail) => {
    child.once('exit', (code) => fail(new Error(`a worker ended with ${code}`)));
    child.stdout?.on('data', (text: Buffer) => {
      if (text.toString().includes('worker ready')) done(child);
    });
  });
}

function peakOf({ pid }: ChildProcess): number | null {
  try {
    const peak = readFileSync(`/proc/${pid}/status`, 'utf8').match(/VmHWM:\s+(\d+) kB/)?.[1];
    return peak === undefined ? null : Number(peak) / 1024;
  } catch {
    return null;
  }
}

function end(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null) return Promise.resolve();
  return new Promise((done) => {
    child.removeAllListeners('exit');
    child.once('exit', () => done());
    child.kill('SIGTERM');
  });
}
