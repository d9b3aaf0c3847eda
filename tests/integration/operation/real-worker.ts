import { type ChildProcess, spawn } from 'node:child_process';

export type RealWorker = {
  process: ChildProcess;
  /** Everything it wrote, so far. */
  said: () => string;
  /** Asks it to end; how it ended and how long that took. */
  stop: () => Promise<{ code: number | null; ms: number }>;
};

/** The worker as a real deployment runs it, beside this process. */
export async function startRealWorker(environment: Record<string, string>): Promise<RealWorker> {
  const { VITEST: _, VITEST_POOL_ID: __, NODE_ENV: ___, ...rest } = process.env;
  const child = spawn(process.execPath, ['lib/launch/serve.mjs', 'worker'], {
    env: { ...rest, NODE_ENV: 'production', PLUMBLINE_LOG: 'trace', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (chunk) => {
      said += chunk;
    });
  const ended = new Promise<number | null>((done) => child.on('exit', done));
  await new Promise<void>((ready, fail) => {
    const look = () => said.includes('worker ready\n') && ready();
    child.stdout.on('data', look);
    child.on('exit', (code) => fail(new Error(`the worker ended with ${code}:\n${said}`)));
  });
  return {
    process: child,
    said: () => said,
    stop: async () => {
      const began = Date.now();
      child.kill('SIGTERM');
      return { code: await ended, ms: Date.now() - began };
    },
  };
}
