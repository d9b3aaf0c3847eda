import { createHash } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { endOpenAbsences } from '#lib/db/absences.ts';
import {
  findFirstVersion,
  findOwn,
  findSameSession,
  findSubmitted,
  insertAfterCheckIn,
  insertCheckIn,
  insertQuestion,
  lockClient,
  markReplaced,
} from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { withNamedStatements } from '#lib/db/named-statements.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { carryVerdicts } from '#lib/db/set-verdicts.ts';
import { canonicalJson } from '#lib/domain/canonical-json.ts';
import { type Caution, cautionsOf, isUrgent } from '#lib/domain/caution.ts';
import { isForGuardians } from '#lib/domain/intake/guardian-mail.ts';
import { AppError } from '#lib/errors.ts';
import type { CheckInBody } from '#lib/schemas/check-in.ts';
import { assertDateFits, assertSetsFit } from './check-in-fits.ts';
import { tellGuardians } from './guardians/tell-guardians.ts';
import { raiseUrgent } from './raise-urgent.ts';
import { assertConsent } from './rights/assert-consent.ts';

export type SubmitAnswer = { id: string; receivedAt: string; cautions: Caution[] };

/**
 * Keeps one check-in, whole or not at all. The same id with the same body gets the same answer however often it is
 * sent; with another body it is refused. High pain and danger signs are raised in the same transaction.
 */
export async function submitCheckIn(actor: Actor, body: CheckInBody, now: Date): Promise<SubmitAnswer> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client sends check-ins.');
  const bodyHash = createHash('sha256').update(canonicalJson(body)).digest('hex');
  return withTeamPg(actor.scope, async (given) => {
    const tx = withNamedStatements(given); // the same twenty statements for every phone of an evening
    // The lock comes first: whoever sends the same id at the same moment waits here and finds the row below.
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const earlier = await findSubmitted(tx, body.id);
    if (earlier) {
      if (earlier.clientId === clientId && earlier.bodyHash === bodyHash)
        return answer(body, earlier.receivedAt, client.under18);
      throw new AppError(
        'conflict',
        'A check-in with this id is kept already, with other contents. Nothing was changed.',
        {
          fields: { id: 'is taken: make a new id, or send the correction with correctsId' },
        },
      );
    }
    await assertConsent(tx, clientId);
    await keep(tx, { clientId, body, bodyHash, now, under18: client.under18 });
    return answer(body, now, client.under18);
  });
}

type Kept = { clientId: string; body: CheckInBody; bodyHash: string; now: Date; under18: boolean };

async function keep(tx: TeamPg, { clientId, body, bodyHash, now, under18 }: Kept): Promise<void> {
  assertDateFits(body, now);
  const rungIds = [...new Set(body.sets.map((set) => set.rungId))];
  assertSetsFit(body, await listHistoryRungs(tx, rungIds));
  const dates = [body.date];
  if (body.correctsId) dates.push(await replace(tx, { clientId, id: body.correctsId, now }));
  await assertFirstOfSession(tx, clientId, body);

  const sentAt = body.sentAt ? new Date(Math.min(Date.parse(body.sentAt), now.getTime())) : now;
  await insertCheckIn(tx, { ...body, clientId, bodyHash, sentAt, receivedAt: now }, body);
  if (body.correctsId) await carryVerdicts(tx, { from: body.correctsId, to: body.id });
  if (body.kind === 'training') await endOpenAbsences(tx, clientId, body.date);
  if (body.question) await insertQuestion(tx, { clientId, checkInId: body.id, text: body.question, at: now });
  await rebuildRollups(tx, clientId, dates);
  await insertAfterCheckIn(tx, { clientId, checkInId: body.id });
  if (isUrgent(body, under18)) await raiseUrgent(tx, clientId, now);
  if (isForGuardians(body)) {
    const first = body.correctsId ? await findFirstVersion(tx, body.correctsId) : body.id;
    await tellGuardians(tx, { clientId, key: first, told: body, now });
  }
}

/** Marks the corrected check-in as replaced and returns its date. */
async function replace(tx: TeamPg, of: { clientId: string; id: string; now: Date }): Promise<string> {
  const corrected = await findOwn(tx, of.clientId, of.id);
  if (!corrected) throw new AppError('not-found', 'The check-in to correct is not here.');
  if (corrected.replaced) {
    throw new AppError('conflict', 'This check-in was corrected already. Correct the newest one.', {
      fields: { correctsId: 'names a check-in that is corrected already: use the id of its correction' },
    });
  }
  await markReplaced(tx, of.id, of.now);
  return corrected.date;
}

/** A phone that crossed a date line must not make one session two. */
async function assertFirstOfSession(tx: TeamPg, clientId: string, body: CheckInBody): Promise<void> {
  if (body.kind !== 'training' || body.session === null) return;
  const { date, session } = body;
  const same = await findSameSession(tx, { clientId, date, session, exceptId: body.correctsId });
  if (!same) return;
  throw new AppError('conflict', `Session ${session} of ${date} is kept already. Correct that one.`, {
    fields: {
      session: `is kept already for ${date}: correct that check-in (${same}), or leave the session out`,
    },
  });
}

function answer(body: CheckInBody, receivedAt: Date, under18: boolean): SubmitAnswer {
  return { id: body.id, receivedAt: receivedAt.toISOString(), cautions: cautionsOf(body, under18) };
}
