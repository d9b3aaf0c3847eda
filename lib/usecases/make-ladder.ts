import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findOutline, findPart, insertLadder, lockOutline } from '#lib/db/library-outline.ts';
import { AppError } from '#lib/errors.ts';
import type { NewLadder } from '#lib/schemas/outline.ts';

/** A new ladder at the end of its part, without rungs. */
export async function makeLadder(actor: Actor, about: NewLadder): Promise<{ ladderId: string }> {
  return withTeamPg(actor.scope, async (tx) => {
    await lockOutline(tx);
    if (!(await findPart(tx, about.partId))) {
      const words = 'is not a part of your skills: choose one from the list';
      throw new AppError('invalid', `partId: ${words}`, { fields: { partId: words } });
    }
    const { ladders } = await findOutline(tx);
    const position = Math.max(0, ...ladders.map((ladder) => ladder.position)) + 1;
    const ladderId = await insertLadder(tx, { ...about, position });
    await insertAudit(tx, actor, { action: 'ladder-made', objectId: ladderId, fields: ['ladder'] });
    return { ladderId };
  });
}
