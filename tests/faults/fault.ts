import type { QueuePlace } from '#lib/jobs/backend.ts';
import type { Stage } from './stage.ts';

export type Table = {
  /** A fresh stage; closed when the fault is over. */
  open: () => Promise<Stage>;
  /** What the same acts leave behind with nothing going wrong; played once for each name. */
  undisturbed: (name: string, acts: (stage: Stage) => Promise<void>) => Promise<string[]>;
};

export type Fault = {
  name: string;
  /** What goes wrong, in a few words. */
  what: string;
  kinds: readonly QueuePlace['kind'][];
  /** Throws when anything is not as it must be; says what was seen. */
  run: (table: Table) => Promise<string>;
};

export const BOTH = ['postgres', 'redis'] as const;
