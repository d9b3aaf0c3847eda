import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listCoachedClients } from '#lib/db/moves.ts';
import { listTeamMembers } from '#lib/db/team-members.ts';

export type Movable = {
  clients: { id: string; name: string; coachId: string; coach: string }[];
  coaches: { id: string; name: string }[];
};

/** The clients whom this member may move, by name, and the coaches of the team. */
export function loadMovable(actor: Actor, now: Date): Promise<Movable> {
  return withTeamPg(actor.scope, async (tx) => {
    const members = await listTeamMembers(tx, now);
    const clients = await listCoachedClients(tx);
    const names = new Map(members.map(({ id, name }) => [id, name]));
    return {
      clients: clients
        .filter(({ coachId }) => actor.role === 'lead' || coachId === actor.memberId)
        .map((client) => ({ ...client, coach: names.get(client.coachId) ?? 'somebody who left' }))
        .sort((a, b) => a.name.localeCompare(b.name, 'en')),
      coaches: members.filter(({ role }) => role !== 'assistant').map(({ id, name }) => ({ id, name })),
    };
  });
}
