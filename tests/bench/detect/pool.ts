import { type ChildProcess, fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Job, Looked } from './jobs.ts';

const WORKER = fileURLToPath(new URL('./worker.ts', import.meta.url));

/** Runs jobs in as many processes as there are processors; results in the order of the jobs. */
export async function runAll(jobs: readonly Job[]): Promise<Looked[][]> {
  const results: Looked[][] = new Array(jobs.length);
  let next = 0;
  const work = async (child: ChildProcess) => {
    for (let index = next++; index < jobs.length; index = next++) {
      const job = jobs[index];
      if (job) results[index] = await ask(child, job);
    }
    child.disconnect();
  };
  await Promise.all(Array.from({ length: availableParallelism() }, () => work(fork(WORKER))));
  return results;
}

function ask(child: ChildProcess, job: Job): Promise<Looked[]> {
  return new Promise((resolve, reject) => {
    const onExit = (code: number | null) => reject(new Error(`a worker of the bench ended with ${code}`));
    child.once('exit', onExit);
    child.once('message', (seen) => {
      child.off('exit', onExit);
      resolve(seen as Looked[]);
    });
    child.send(job);
  });
}
