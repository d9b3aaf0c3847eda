import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type ClientListRow, listClients } from '#lib/db/clients.ts';

/** The team's clients by name; `text` narrows them to names that contain it. */
export function loadClients(actor: Actor, input: { text: string }): Promise<ClientListRow[]> {
  return withTeamPg(actor.scope, (tx) => listClients(tx, input.text));
}
