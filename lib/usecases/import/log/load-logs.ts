import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { listLogImports } from '#lib/db/log-imports.ts';
import { type LogImport, UNDO_LOG_MS } from '#lib/domain/log-import.ts';

export type LogsPage = { name: string; logs: (LogImport & { mayUndo: boolean })[] };

/** The client and the old logs that came in so far, newest first; undefined: not here. */
export function loadLogs(actor: Actor, clientId: string, now: Date): Promise<LogsPage | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const logs = await listLogImports(tx, clientId);
    return {
      name: client.name,
      logs: logs.map((log) => ({
        ...log,
        mayUndo: log.undoneAt === null && now.getTime() - log.at.getTime() <= UNDO_LOG_MS,
      })),
    };
  });
}
