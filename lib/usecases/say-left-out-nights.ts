import { withTeamPg } from '#lib/db/client.ts';
import { insertLeftOutNights, listLeftOutNights } from '#lib/db/left-out-nights.ts';

/**
 * Writes down, once, which nights of whom will not be run any more because they are longer ago than is caught up.
 * Returns for how many clients.
 */
export async function sayLeftOutNights(now: Date): Promise<number> {
  let clients = 0;
  for (const { scope, leftOut } of await listLeftOutNights(now)) {
    await withTeamPg(scope, (tx) => insertLeftOutNights(tx, leftOut, now));
    clients += leftOut.length;
  }
  return clients;
}
