import type { SpawnSyncOptionsWithStringEncoding } from 'node:child_process';

export function freePort(): Promise<number>;
export function serverPlace(
  folder: string,
  native?: string,
): {
  who: { uid?: number; gid?: number };
  bin: (name: string) => string;
  folder: string;
  /** Every folder that is its own. */
  all: string[];
  data: string;
  complete: string;
  options: SpawnSyncOptionsWithStringEncoding;
};
export function startPostgres(options: {
  folder: string;
  password: string;
  port?: number;
  settings?: string[];
  native?: string;
}): Promise<{ url: (database: string) => string; stop: () => void; remove: () => void; reused: boolean }>;
