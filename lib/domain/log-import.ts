/** An old training log that was brought in. */
export type LogImport = {
  id: string;
  /** Name of the coach. */
  by: string;
  days: number;
  sets: number;
  /** First and last local date of it. */
  from: string;
  to: string;
  at: Date;
  undoneAt: Date | null;
};

/** A log can be taken back this long after it came in: one day. */
export const UNDO_LOG_MS = 86_400_000;
