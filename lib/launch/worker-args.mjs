// How every launcher starts a worker. The heap is bounded: two batches of the night hold some 100 MB, and without a
// bound Node lets what is over and done with pile up to several times that on a machine with much memory.
export const WORKER_ARGS = ['--max-old-space-size=320', '--import', 'tsx', 'worker/main.ts'];
