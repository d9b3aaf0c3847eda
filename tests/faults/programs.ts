import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'esbuild';

const ROOT = resolve(import.meta.dirname, '../..');
/** Inside the checkout, so that packages are found. */
const BUILT = join(ROOT, '.data/faults');

export type Programs = { folder: string; worker: string; web: string; arrange: string };

/** The product's own worker and routes, built once so that a killed worker is back in a second. */
export async function bundlePrograms(key: string): Promise<Programs> {
  const folder = join(BUILT, key.replace(/\W+/g, '-'));
  mkdirSync(folder, { recursive: true });
  const entries = {
    worker: 'worker/main.ts',
    web: 'tests/faults/web.ts',
    arrange: 'tests/faults/arrange.ts',
  };
  await build({
    entryPoints: Object.entries(entries).map(([out, file]) => ({ in: join(ROOT, file), out })),
    absWorkingDir: ROOT,
    outdir: folder,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    format: 'esm',
    platform: 'node',
    packages: 'external',
    logLevel: 'error',
  });
  const at = (name: string) => join(folder, `${name}.mjs`);
  return { folder, worker: at('worker'), web: at('web'), arrange: at('arrange') };
}

/** A program of ours at work. `lines`: the last it wrote. */
export type Running = {
  child: ChildProcess;
  lines: string[];
  ended: Promise<number | null>;
  /** -9, and gone when this returns. */
  kill: () => Promise<void>;
  /** As an orchestrator stops it. */
  stop: () => Promise<number | null>;
};

/** Starts a program and waits until it has written `ready`. Its life ends with ours: it hears our channel close. */
export async function startProgram(
  file: string,
  environment: Record<string, string>,
  ready: string,
): Promise<Running> {
  const child = spawn(process.execPath, [file], {
    cwd: ROOT,
    env: {
      PATH: process.env.PATH,
      HOME: process.env.HOME,
      TZ: 'Asia/Kathmandu',
      NODE_ENV: 'test',
      ...environment,
    },
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  });
  const lines: string[] = [];
  const ended = new Promise<number | null>((done) => child.once('exit', (code) => done(code)));
  const isReady = new Promise<void>((done) => {
    let rest = '';
    const keep = (chunk: Buffer) => {
      const parts = `${rest}${chunk}`.split('\n');
      rest = parts.pop() ?? '';
      lines.push(...parts);
      lines.splice(0, lines.length - 400);
      if (parts.some((line) => line.includes(ready))) done();
    };
    child.stdout?.on('data', keep);
    child.stderr?.on('data', keep);
  });
  const kill = async () => {
    child.kill('SIGKILL');
    await ended;
  };
  const first = await Promise.race([isReady.then(() => 'ready'), ended.then((code) => `ended with ${code}`)]);
  if (first !== 'ready') throw new Error(`${file} ${first}\n${lines.slice(-5).join('\n')}`);
  return {
    child,
    lines,
    ended,
    kill,
    stop: async () => {
      child.kill('SIGTERM');
      return ended;
    },
  };
}
