import type { Actor } from '#lib/auth/actor.ts';
import { impossibleJoints } from '#lib/balance/impossible-joints.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findSizedStill, insertStillFrame } from '#lib/db/still-frames.ts';
import { AppError, invalidField } from '#lib/errors.ts';
import type { StillFrameBody } from '#lib/schemas/still-frame.ts';

/** Nothing can be placed beside the picture. */
function assertInPicture(body: StillFrameBody, { width, height }: { width: number; height: number }): void {
  for (const points of [body.placed, body.second]) {
    for (const [name, { x, y }] of Object.entries(points ?? {})) {
      if (x <= width && y <= height) continue;
      const why = `the ${name} lies beside the picture (${width} x ${height} px): move it inside`;
      throw invalidField(`placed.${name}`, why);
    }
  }
}

/** A limb towards the camera looks shorter; none looks longer than it is. */
function assertPossible(placed: StillFrameBody['placed']): void {
  const long = impossibleJoints(placed).filter(({ times }) => times > 1 || times === 0);
  const [first] = long;
  if (!first) return;
  const why =
    first.times === 0
      ? `the ${first.segment} has no length: move one of its ends`
      : `the ${first.segment} is ${first.times.toFixed(1)} times as long as beside the others it can be: move one of its ends`;
  throw invalidField('placed', why);
}

/** Keeps where the joints were placed on a still. What it says is worked out again whenever it is shown. */
export function keepStillFrame(
  actor: Actor,
  stillId: string,
  body: StillFrameBody,
  now: Date,
): Promise<{ id: string }> {
  return withTeamPg(actor.scope, async (tx) => {
    const still = await findSizedStill(tx, stillId);
    if (!still) throw new AppError('not-found', 'This is not there, or not in your team.');
    assertInPicture(body, still);
    assertPossible(body.placed);
    if (body.second) assertPossible(body.second);
    const { clientId } = still;
    const id = await insertStillFrame(tx, { ...still, at: now }, body);
    await insertAudit(tx, actor, { action: 'joints-placed', clientId, objectId: id, fields: [] });
    return { id };
  });
}
