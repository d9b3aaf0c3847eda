// How every launcher starts a worker. The heap is bounded: two batches of the night hold some 100 MB, and without a
// bound Node lets what is over and done with pile up to several times that on a machine with much memory. New objects
// begin as new ones always: every second or third process guessed from its first batches that they would stay, made them
// where collecting is dear, and took a third more time for every night of its life. A process collects by itself: there
// is a worker for each core, and helping threads would only take the other's.
export const WORKER_ARGS = [
  '--max-old-space-size=320',
  '--no-allocation-site-pretenuring',
  '--single-threaded-gc',
  '--import',
  'tsx',
  'worker/main.ts',
];
