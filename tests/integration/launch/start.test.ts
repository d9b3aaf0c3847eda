import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freePort, serverPlace, startPostgres } from '#lib/launch/postgres.mjs';

function start(environment: Record<string, string>): Promise<{ code: number | null; told: string }> {
  const child = spawn(process.execPath, ['lib/launch/start.mjs'], {
    env: { ...process.env, ...environment },
  });
  let told = '';
  child.stdout.on('data', (chunk) => {
    told += chunk;
  });
  child.stderr.on('data', (chunk) => {
    told += chunk;
  });
  return new Promise((done) => child.on('close', (code) => done({ code, told })));
}

describe('npm start refuses plainly', () => {
  let taken: Server;
  let port = 0;
  beforeAll(async () => {
    taken = createServer();
    await new Promise<void>((done) => taken.listen(0, '127.0.0.1', done));
    port = (taken.address() as { port: number }).port;
  });
  afterAll(() => {
    taken.close();
  });

  it('when the port is in use, and says what to do', async () => {
    const { code, told } = await start({ PORT: String(port) });
    expect(code).toBe(1);
    expect(told).toContain(`Port ${port} is in use`);
    expect(told).toContain(`PORT=${port + 1} npm start`);
    expect(told).not.toMatch(/\n\s+at /); // no stack
  });

  it.each(['0', '70000', 'eighty', '12.5'])('when PORT is %s', async (value) => {
    const { code, told } = await start({ PORT: value });
    expect(code).toBe(1);
    expect(told).toContain(`PORT is "${value}"`);
  });
});

describe('a real deployment', () => {
  const serve = (environment: Record<string, string>) =>
    spawnSync(process.execPath, ['lib/launch/serve.mjs', 'worker'], {
      encoding: 'utf8',
      env: { ...process.env, NODE_ENV: 'production', ...environment },
    });

  it.each([
    ['a missing secret', { PLUMBLINE_SECRET: '' }, /PLUMBLINE_SECRET/],
    [
      'an example secret',
      { PLUMBLINE_SECRET: 'change-me-change-me-change-me-change-me' },
      /PLUMBLINE_SECRET: .*example/,
    ],
    ['a short secret', { PLUMBLINE_SECRET: 'q8Zt5Jm2rX7w' }, /PLUMBLINE_SECRET: .*shorter/],
    ['no database', { DATABASE_URL: '', APP_DATABASE_URL: '' }, /DATABASE_URL/],
  ])('does not start with %s', (_, environment, message) => {
    const done = serve(environment);
    expect(done.status).toBe(1);
    expect(done.stderr).toMatch(message);
  });
});

describe('the embedded server', () => {
  const folder = mkdtempSync(join(tmpdir(), 'plumbline-pg-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('starts, is found running by a second start, and stops', async () => {
    const first = await startPostgres({ folder, password: 'p', port: await freePort() });
    const second = await startPostgres({ folder, password: 'p' });
    expect([first.reused, second.reused]).toEqual([false, true]);
    expect(second.url('x')).toBe(first.url('x'));
    first.stop();
    const third = await startPostgres({ folder, password: 'p' });
    expect(third.reused).toBe(false);
    third.stop();
  });

  it('begins again when its first making was cut short', async () => {
    rmSync(join(folder, 'complete')); // as after a kill in the middle of initdb
    const again = await startPostgres({ folder, password: 'p' });
    expect(again.reused).toBe(false);
    const { all, data } = serverPlace(folder);
    expect(existsSync(data)).toBe(true);
    again.remove();
    expect(all.filter((each) => existsSync(each))).toEqual([]);
  });
});
