import type { Actor } from '#lib/auth/actor.ts';
import type { KeptStill } from '#lib/balance/kept-still.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { findSizedStill, listStillFrames, type SizedStill } from '#lib/db/still-frames.ts';

const FRAMES_SHOWN = 20;

export type StillPage = {
  client: { id: string; name: string; zone: string };
  size: { width: number; height: number };
  film: SizedStill['film'];
  /** Frames of this client that were kept, newest first, on whichever still. */
  frames: KeptStill[];
};

/** A still with what was placed on it and on others of the client; undefined: not there, or not in the team. */
export function loadStillPage(actor: Actor, stillId: string): Promise<StillPage | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const still = await findSizedStill(tx, stillId);
    const client = still && (await findClient(tx, still.clientId));
    if (!still || !client) return undefined;
    const { id, name, zone } = client;
    return {
      client: { id, name, zone },
      size: { width: still.width, height: still.height },
      film: still.film,
      frames: await listStillFrames(tx, id, FRAMES_SHOWN),
    };
  });
}
