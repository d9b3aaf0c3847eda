import type { Actor } from '#lib/auth/actor.ts';
import { insertRead } from '#lib/db/audit-lines.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { logger } from '#lib/logger.ts';

/** What of a record was opened: the words stand beside the line. */
export type ReadWhat =
  | 'client-page'
  | 'intake'
  | 'plan'
  | 'gaps'
  | 'start'
  | 'reason'
  | 'record'
  | 'picture'
  | 'film';

/**
 * Notes that a member opened a client's record, at most once an hour for each client. Runs after the answer was sent:
 * nobody waits for it, and a page is not lost because its line was; then the log says so. `at` left out: now.
 */
export async function noteRead(actor: Actor, clientId: string, what: ReadWhat, at?: Date): Promise<void> {
  if (actor.memberId === null) return;
  const { userId, role, scope } = actor;
  await withTeamPg(scope, (tx) => insertRead(tx, { userId, role, clientId, what, at: at ?? null })).catch(
    (error: unknown) => logger().error({ error, what }, 'a reading was not noted'),
  );
}
