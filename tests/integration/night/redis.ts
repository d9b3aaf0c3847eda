import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { connect, createServer } from 'node:net';

export type TestRedis = { url: string; stop: () => void };

/**
 * REDIS_URL's server, else one of this machine's on a free port; undefined where there is none. Test files run side by
 * side: each names a numbered database of its own, so that no worker takes another file's jobs.
 */
export async function findRedis(database: number): Promise<TestRedis | undefined> {
  if (process.env.REDIS_URL) {
    const url = new URL(process.env.REDIS_URL);
    url.pathname = `/${database}`;
    return { url: url.href, stop: () => undefined };
  }
  if (spawnSync('redis-server', ['--version']).status !== 0) return undefined;
  const port = await freePort();
  const server = spawn(
    'redis-server',
    ['--port', String(port), '--save', '', '--appendonly', 'no', '--bind', '127.0.0.1'],
    {
      stdio: 'ignore',
    },
  );
  await answers(port, server);
  return { url: `redis://127.0.0.1:${port}/${database}`, stop: () => void server.kill('SIGKILL') };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  await new Promise((done) => server.close(done));
  if (typeof address !== 'object' || address === null) throw new Error('no free port');
  return address.port;
}

async function answers(port: number, server: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if (server.exitCode !== null) throw new Error(`redis-server ended with ${server.exitCode}`);
    const open = await new Promise<boolean>((done) => {
      const socket = connect(port, '127.0.0.1');
      socket.once('connect', () => done(true)).once('error', () => done(false));
      socket.once('close', () => undefined);
      setTimeout(() => socket.destroy(), 200).unref();
    });
    if (open) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error('redis-server does not answer');
}
