import { setPriority } from 'node:os';
import { queuePlace } from '#lib/jobs/backend.ts';
import { logger } from '#lib/logger.ts';
import { startWorker } from './start.ts';

/** On one machine with the pages the night gives way to who is waiting for one: a third of their share where both want all. */
const NICE = 5;
setPriority(NICE);

let stop: (() => Promise<void>) | undefined;
let stopping = false;

async function end(why: string): Promise<void> {
  if (stopping) return;
  stopping = true;
  logger().info({ why }, 'worker stops');
  await stop?.();
  process.exit(0);
}

process.on('SIGTERM', () => void end('SIGTERM'));
process.on('SIGINT', () => void end('SIGINT'));
// Started by a launcher: end when it ends, however it ended.
process.on('disconnect', () => void end('the launcher is gone'));
process.on('message', (message) => {
  if (message === 'stop') void end('the launcher says so');
});

try {
  stop = await startWorker(queuePlace());
  process.channel?.unref();
  process.stdout.write('worker ready\n');
} catch (error) {
  logger().fatal({ error }, 'the worker could not start');
  process.exit(1);
}
