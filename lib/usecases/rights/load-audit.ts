import type { Actor } from '#lib/auth/actor.ts';
import { type AuditLineRow, listAuditLines } from '#lib/db/audit-lines.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listClients } from '#lib/db/clients.ts';
import { listTeamMembers } from '#lib/db/team-members.ts';
import type { AuditFilter } from '#lib/schemas/rights.ts';
import { byName } from '#lib/views/client-list.ts';
import { actionsOf } from '#lib/views/rights/audit-words.ts';

const LINES = 50;
type Person = { id: string; name: string };

export type AuditPage = {
  lines: AuditLineRow[];
  clients: Person[];
  members: Person[];
  zone: string;
  /** Where the next page begins; null: this is the last one. */
  older: string | null;
};

/** One page of the record of acts, newest first, with whom it can be narrowed to. */
export function loadAudit(actor: Actor, filter: AuditFilter, now: Date): Promise<AuditPage> {
  return withTeamPg(actor.scope, async (tx) => {
    const [at, id] = filter.before?.split('_') ?? [];
    const found = await listAuditLines(tx, {
      actions: actionsOf(filter.kind),
      clientId: filter.client ?? null,
      memberId: filter.who ?? null,
      before: at && id ? { at, id } : null,
      limit: LINES + 1,
    });
    const lines = found.slice(0, LINES);
    const last = lines.at(-1);
    const members = await listTeamMembers(tx, now);
    return {
      lines,
      clients: byName(await listClients(tx), '').map(({ id: clientId, name }) => ({ id: clientId, name })),
      members: members.map(({ id: memberId, name }) => ({ id: memberId, name })),
      zone: members.find((member) => member.id === actor.memberId)?.zone ?? 'UTC',
      older: found.length > LINES && last ? `${last.at.toISOString()}_${last.id}` : null,
    };
  });
}
