import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type ClientListRow, listClients } from '#lib/db/clients.ts';
import { byName } from '#lib/views/client-list.ts';

/** The team's clients by name, those who left last; `text` narrows them to names that contain it. */
export function loadClients(actor: Actor, input: { text: string }): Promise<ClientListRow[]> {
  return withTeamPg(actor.scope, async (tx) => byName(await listClients(tx), input.text));
}
