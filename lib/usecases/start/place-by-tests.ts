import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient } from '#lib/db/clients.ts';
import { loadGapLibrary } from '#lib/db/gap-library.ts';
import { lockPlanVersion, upsertPlacement } from '#lib/db/plans.ts';
import { lockStartTests, markPlaced, replacePlacements } from '#lib/db/start-tests.ts';
import { listPlacementsFrom } from '#lib/db/step-records.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { GapLadder } from '#lib/planning/gaps/gap-types.ts';
import { sidesOf } from '#lib/planning/start/same-drill.ts';
import type { Placed, PlaceStartTests } from '#lib/schemas/start-tests.ts';
import { assertMember } from '../assert-member.ts';
import { readTests } from './start-facts.ts';

type Input = { clientId: string; testsId: string };

/**
 * Places a client on all ladders at once, as the coach left the proposal: one act, from today, with its way back. Ladders
 * without a rung are left as they are.
 */
export function placeByTests(
  actor: Actor,
  input: Input & { asked: PlaceStartTests },
  now: Date,
): Promise<{ placed: number }> {
  const byId = assertMember(actor);
  const { clientId, testsId } = input;
  return withTeamPg(actor.scope, async (tx) => {
    const { today, version } = await lockHere(tx, clientId, now);
    const row = await lockStartTests(tx, clientId, testsId);
    if (!row || row.endedAt) throw new AppError('not-found', 'These start tests are not here.');
    if (row.placedAt)
      throw new AppError('conflict', 'The client was placed by these tests already. Undo that first.');
    const library = await loadGapLibrary(tx);
    const asked = withBothSides(library, input.asked);
    assertPlaces(library, asked);
    const why = `start tests ${testsId.slice(0, 8)}`;
    const placements = asked.places.flatMap(({ rungId, ...one }) =>
      rungId === null ? [] : [{ ...one, rungId, from: today, why }],
    );
    if (placements.length === 0)
      throw new AppError('invalid', 'places: choose a rung on at least one ladder', {
        fields: { places: 'choose a rung on at least one ladder' },
      });
    const before = (await listPlacementsFrom(tx, clientId, today)).filter((old) =>
      placements.some(
        (one) => one.ladderId === old.ladderId && one.side === old.side && one.from === old.from,
      ),
    );
    for (const one of placements) await upsertPlacement(tx, { ...one, clientId });
    const what: Placed = { byId, from: today, planVersion: version, placements, before };
    await markPlaced(tx, testsId, { at: now, what });
    await insertAudit(tx, actor, { action: 'start-tests-placed', clientId, objectId: testsId, fields: [] });
    return { placed: placements.length };
  });
}

/** Takes a placing back. Refused once a plan was written on it: then the way back is a new version of the plan. */
export function undoPlacing(actor: Actor, input: Input, now: Date): Promise<void> {
  assertMember(actor);
  const { clientId, testsId } = input;
  return withTeamPg(actor.scope, async (tx) => {
    const { version } = await lockHere(tx, clientId, now);
    const row = await lockStartTests(tx, clientId, testsId);
    const placed = row && readTests(row).placed;
    if (!row || !placed) throw new AppError('not-found', 'There is no placing to undo.');
    if (version !== placed.planVersion)
      throw new AppError(
        'conflict',
        'A plan was written since, so the placing cannot be undone. Change the rungs in the plan.',
      );
    await replacePlacements(tx, clientId, { gone: placed.placements, back: placed.before });
    await markPlaced(tx, testsId, null);
    await insertAudit(tx, actor, { action: 'start-placing-undone', clientId, objectId: testsId, fields: [] });
  });
}

async function lockHere(
  tx: TeamPg,
  clientId: string,
  now: Date,
): Promise<{ today: string; version: number }> {
  const client = await findClient(tx, clientId);
  const version = client && (await lockPlanVersion(tx, clientId));
  if (!client || version === undefined) throw new AppError('not-found', 'This client is not here.');
  return { today: localDateOf(now, client.zone), version };
}

/** A rung done with both hands that is named for left and for right is one place for both. */
function withBothSides(library: readonly GapLadder[], { places }: PlaceStartTests): PlaceStartTests {
  const isBoth = (rungId: string | null) => {
    const rung = library.flatMap(({ rungs }) => rungs).find(({ id }) => id === rungId);
    return rung !== undefined && sidesOf(rung).length === 1;
  };
  const twin = (one: PlaceStartTests['places'][number]) =>
    places.find(
      (other) =>
        other !== one &&
        other.ladderId === one.ladderId &&
        other.rungId === one.rungId &&
        other.side !== one.side,
    );
  return {
    places: places.flatMap((one) => {
      if (one.side === 'both' || !isBoth(one.rungId) || !twin(one)) return [one];
      return one.side === 'left' ? [{ ...one, side: 'both' as const }] : [];
    }),
  };
}

function assertPlaces(library: readonly GapLadder[], { places }: PlaceStartTests): void {
  const fields: Record<string, string> = {};
  const known = new Set<string>();
  for (const [at, { ladderId, side, rungId }] of places.entries()) {
    const ladder = library.find(({ id }) => id === ladderId);
    const rung = ladder?.rungs.find(({ id }) => id === rungId);
    const apart = rung?.eachSide === true && !rung.eachIsLeg;
    if (!ladder) fields[`places.${at}.ladderId`] = 'is not a ladder of yours in use';
    else if (rungId !== null && !rung)
      fields[`places.${at}.rungId`] = 'is not a rung of this ladder in use: choose one from the list';
    else if (rung && side !== 'both' && !apart)
      fields[`places.${at}.side`] = 'is done with both sides together: choose it for left and right';
    if (known.has(`${ladderId} ${side}`)) fields[`places.${at}.ladderId`] = 'is there twice';
    known.add(`${ladderId} ${side}`);
  }
  const [first] = Object.entries(fields);
  if (first) throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}
