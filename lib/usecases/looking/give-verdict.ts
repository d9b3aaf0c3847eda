import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { insertAfterCheckIn } from '#lib/db/check-ins.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { type ClipToLook, findCountedDate, findSetDate } from '#lib/db/looking.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import {
  insertSetVerdict,
  listClipVerdicts,
  setClipVerdict,
  type VerdictPlace,
} from '#lib/db/set-verdicts.ts';
import { worstVerdict } from '#lib/domain/clip-verdict.ts';
import { FAULTS } from '#lib/domain/vocabulary.ts';
import { AppError, invalidField } from '#lib/errors.ts';
import type { LookAct } from '#lib/schemas/looking.ts';
import { faultsToSee, verdictInWords } from '#lib/views/looking/verdict-words.ts';
import type { ActDone } from '../act-on-reason.ts';

type Given = Extract<LookAct, { act: 'verdict' }>;

/**
 * Keeps what was seen of one set beside what the client told of it. The day is added up again and the checks of this
 * client run once more, as after a correction.
 */
export async function giveVerdict(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { clip, given }: { clip: ClipToLook; given: Given },
  now: Date,
): Promise<ActDone> {
  const { clientId } = clip;
  assertFaults(clip, given);
  const place = await placeOf(tx, clip, given.set);
  const { verdict, faults } = given;
  const id = await insertSetVerdict(tx, {
    ...place,
    clientId,
    clipId: clip.id,
    byId: actor.memberId,
    verdict,
    faults: FAULTS.filter((fault) => faults.includes(fault)),
    at: now,
  });
  await followVerdict(tx, { clientId, clipId: clip.id, checkInId: place.checkInId });
  await insertAfterCheckIn(tx, { clientId, checkInId: id, change: 'seen' });
  await insertAudit(tx, actor, { action: 'set-judged', clientId, objectId: clip.id, fields: ['verdict'] });
  return { actId: id, line: `Kept: ${verdictInWords({ verdict, faults })}.`, folds: false };
}

/** The clip's own verdict and the day of the check-in, after a verdict came or went. */
export async function followVerdict(
  tx: TeamPg,
  of: { clientId: string; clipId: string; checkInId: string | null },
): Promise<void> {
  const all = await listClipVerdicts(tx, of.clipId);
  const faults = FAULTS.filter((fault) => all.some((one) => one.faults.includes(fault)));
  await setClipVerdict(tx, of.clipId, { verdict: worstVerdict(all.map(({ verdict }) => verdict)), faults });
  if (of.checkInId === null) return;
  const date = await findCountedDate(tx, of.clientId, of.checkInId);
  if (date) await rebuildRollups(tx, of.clientId, [date]);
}

function assertFaults(clip: ClipToLook, { verdict, faults }: Given): void {
  const known = faultsToSee(clip.faults);
  const why =
    verdict !== 'not-clean' && faults.length > 0
      ? 'only what is not clean has faults: take them out, or say not clean'
      : faults.some((fault) => !known.includes(fault))
        ? `choose from the faults of ${clip.ladder}`
        : verdict === 'not-clean' && known.length > 0 && faults.length === 0
          ? 'name at least one fault that was seen'
          : '';
  if (why) throw invalidField('faults', why);
}

async function placeOf(tx: TeamPg, clip: ClipToLook, set: Given['set']): Promise<VerdictPlace> {
  const { rungId, clientId, eachSide } = clip;
  if (set.told) {
    const { checkInId, side, index } = set;
    if (await findSetDate(tx, { clientId, checkInId, rungId, side, index }))
      return { checkInId, rungId, side, index };
    throw new AppError(
      'conflict',
      'This set does not stand any more: the client corrected or deleted the check-in. Open the page again.',
    );
  }
  const sides = eachSide ? ['left', 'right'] : ['both'];
  if (!sides.includes(set.side)) {
    const why = `choose ${sides.join(' or ')}: that is how ${clip.rung} is counted`;
    throw invalidField('set.side', why);
  }
  return { checkInId: null, rungId, side: set.side, index: null };
}
