import { type Job, runJob } from './jobs.ts';

/** Started by the bench, once for each processor: takes jobs, sends back what was seen. */
process.on('message', (job: Job) => process.send?.(runJob(job)));
