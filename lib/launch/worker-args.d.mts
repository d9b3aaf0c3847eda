export const WORKER_ARGS: string[];
