import { pool } from '#lib/db/client.ts';
import { prepareQueueTables } from '#lib/jobs/backend.ts';

/** Makes or updates the queue's tables in PostgreSQL. Safe to call from several processes at once. */
export async function prepareQueue(): Promise<void> {
  const client = await pool().connect();
  try {
    await prepareQueueTables(client);
  } finally {
    client.release();
  }
}
