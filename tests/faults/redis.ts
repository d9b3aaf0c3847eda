import { type ChildProcess, spawn } from 'node:child_process';
import { connect } from 'node:net';
import { freePort } from '#lib/launch/postgres.mjs';
import { pause } from './pause.ts';

/** A redis-server of our own that can be emptied, killed and started again on the same port. */
export type FaultRedis = {
  url: string;
  command: (...words: string[]) => Promise<string>;
  kill: () => void;
  start: () => Promise<void>;
};

export async function startRedis(program: string, folder: string): Promise<FaultRedis> {
  const port = await freePort();
  let server: ChildProcess | undefined;
  const command = (...words: string[]) => speak(port, words);
  const start = async () => {
    const settings = ['--port', String(port), '--bind', '127.0.0.1', '--save', '', '--appendonly', 'no'];
    server = spawn(program, [...settings, '--dir', folder], { stdio: 'ignore' });
    for (let tries = 0; tries < 100; tries += 1) {
      if ((await command('PING').catch(() => '')).startsWith('+PONG')) return;
      await pause(30);
    }
    throw new Error('redis-server does not answer');
  };
  await start();
  return { url: `redis://127.0.0.1:${port}`, command, kill: () => void server?.kill('SIGKILL'), start };
}

/** One command in Redis' own protocol: enough to empty it and to let locks run out. */
function speak(port: number, words: string[]): Promise<string> {
  return new Promise((done, fail) => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    socket.setTimeout(2_000, () => socket.destroy(new Error('no answer')));
    socket.once('error', fail);
    socket.once('connect', () =>
      socket.write(
        `*${words.length}\r\n${words.map((word) => `$${Buffer.byteLength(word)}\r\n${word}\r\n`).join('')}`,
      ),
    );
    socket.on('data', (chunk) => {
      answer += chunk;
      if (answer.endsWith('\r\n')) socket.end();
    });
    socket.once('close', () => done(answer));
  });
}
