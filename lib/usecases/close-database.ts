import { closeDb } from '#lib/db/client.ts';

/** For processes that end: gives the connections back. */
export async function closeDatabase(): Promise<void> {
  await closeDb();
}
