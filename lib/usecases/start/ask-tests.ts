import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { lockPlanVersion } from '#lib/db/plans.ts';
import { endStartTests, findOpenStartTests, insertStartTests, lockStartTests } from '#lib/db/start-tests.ts';
import { AppError } from '#lib/errors.ts';
import type { GapLadder } from '#lib/planning/gaps/gap-types.ts';
import type { AskStartTests } from '#lib/schemas/start-tests.ts';
import { assertMember } from '../assert-member.ts';

/**
 * Sends start tests to a client. Tests that are still open have to be taken back first, so that no phone has two.
 */
export function askTests(
  actor: Actor,
  input: { clientId: string; asked: AskStartTests },
  now: Date,
): Promise<{ testsId: string }> {
  const byId = assertMember(actor);
  const { clientId, asked } = input;
  return withTeamPg(actor.scope, async (tx) => {
    await lockHere(tx, clientId);
    if (await findOpenStartTests(tx, clientId, { lock: true }))
      throw new AppError(
        'conflict',
        'Start tests are asked of this client already. Take them back, or place the client by them, then ask others.',
      );
    assertInLibrary(await loadGapLibrary(tx), asked);
    const testsId = await insertStartTests(tx, { ...asked, clientId, byId, now });
    await insertAudit(tx, actor, { action: 'start-tests-asked', clientId, objectId: testsId, fields: [] });
    return { testsId };
  });
}

/** Takes tests back that were not used to place the client; what was answered stays in the record. */
export function takeTestsBack(
  actor: Actor,
  input: { clientId: string; testsId: string },
  now: Date,
): Promise<void> {
  assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    await lockHere(tx, input.clientId);
    const row = await lockStartTests(tx, input.clientId, input.testsId);
    if (!row) throw new AppError('not-found', 'These start tests are not here.');
    if (row.placedAt)
      throw new AppError('conflict', 'The client was placed by these tests. Undo the placing first.');
    if (row.endedAt) return;
    await endStartTests(tx, row.id, now);
    await insertAudit(tx, actor, {
      action: 'start-tests-taken-back',
      clientId: input.clientId,
      objectId: row.id,
      fields: [],
    });
  });
}

/** Holds the client's row, so that two coaches cannot both ask or place. */
async function lockHere(tx: TeamPg, clientId: string): Promise<void> {
  const known = await findClient(tx, clientId);
  if (!known || (await lockPlanVersion(tx, clientId)) === undefined)
    throw new AppError('not-found', 'This client is not here.');
}

function assertInLibrary(library: readonly GapLadder[], { aims, tests }: AskStartTests): void {
  const fields: Record<string, string> = {};
  for (const [at, { skillId, aimRungId }] of aims.entries()) {
    const ladder = library.find(({ rungs }) => rungs.some(({ id }) => id === aimRungId));
    if (ladder?.skillId !== skillId)
      fields[`aims.${at}.aimRungId`] = 'is not a rung of this skill in use: choose one from the list';
  }
  const known = new Set<string>();
  for (const [at, { ladderId, rungId }] of tests.entries()) {
    const ladder = library.find(({ id }) => id === ladderId);
    if (!ladder?.rungs.some(({ id }) => id === rungId))
      fields[`tests.${at}.rungId`] = 'is not a rung of this ladder in use: choose one from the list';
    else if (known.has(rungId)) fields[`tests.${at}.rungId`] = 'is there twice';
    known.add(rungId);
  }
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}
