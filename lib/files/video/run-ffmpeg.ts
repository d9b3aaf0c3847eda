import { Worker } from 'node:worker_threads';
import { z } from 'zod';

const answer = z.object({ ended: z.number(), out: z.string(), log: z.string(), bytes: z.number() });
export type FfmpegAnswer = z.infer<typeof answer>;
export type FfmpegAsk = {
  program: 'probe' | 'film';
  args: readonly string[];
  /** The path of what it may read, as /in/film, and of what it may write, as /out. */
  input?: string;
  output?: string;
  timeoutMs: number;
};

/** How much memory a film may take; a 4K one of a phone needs some 300 MB. */
const MAX_MEMORY_BYTES = 640 * 1024 * 1024;
const MAX_LOG_LINES = 400;
const THREAD = new URL('./ffmpeg-thread.mjs', import.meta.url);

/** Runs ffmpeg on one file, walled off. `undefined`: it took too long or fell over, which is the file's fault. */
export async function runFfmpeg(ask: FfmpegAsk): Promise<FfmpegAnswer | undefined> {
  const { timeoutMs, ...rest } = ask;
  const worker = new Worker(THREAD, {
    workerData: { ...rest, maxMemoryBytes: MAX_MEMORY_BYTES, maxLogLines: MAX_LOG_LINES },
    execArgv: [],
    env: {},
    stdout: true,
    stderr: true,
    resourceLimits: { maxOldGenerationSizeMb: 128 },
  });
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<FfmpegAnswer | undefined>((done) => {
      timer = setTimeout(() => done(undefined), timeoutMs);
      worker.once('message', (message) => done(answer.parse(message)));
      worker.once('error', () => done(undefined));
      worker.once('exit', () => done(undefined));
    });
  } finally {
    clearTimeout(timer);
    await worker.terminate();
  }
}
