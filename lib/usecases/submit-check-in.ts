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
import { holdsConsent } from '#lib/db/consents.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { rebuildRollups } from '#lib/db/rollups.ts';
import { carryVerdicts } from '#lib/db/set-verdicts.ts';
import { canonicalJson } from '#lib/domain/canonical-json.ts';
import { type Caution, cautionsOf, isUrgent } from '#lib/domain/caution.ts';
import { CONSENT_VERSION } from '#lib/domain/consent.ts';
import { isForGuardians } from '#lib/domain/intake/guardian-mail.ts';
import { AppError } from '#lib/errors.ts';
import type { CheckInBody } from '#lib/schemas/check-in.ts';
import { assertDateFits, assertSetsFit } from './check-in-fits.ts';
import { tellGuardians } from './guardians/tell-guardians.ts';
import { raiseUrgent } from './raise-urgent.ts';
import { assertConsented } from './rights/assert-consent.ts';

export type SubmitAnswer = { id: string; receivedAt: string; cautions: Caution[] };

/**
 * Keeps one check-in, whole or not at all. The same id with the same body gets the same answer however often it is
 * sent; with another body it is refused. High pain and danger signs are raised in the same transaction.
 */
export async function submitCheckIn(actor: Actor, body: CheckInBody, now: Date): Promise<SubmitAnswer> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client sends check-ins.');
  const bodyHash = createHash('sha256').update(canonicalJson(body)).digest('hex');
  const submit = async (tx: TeamPg) => {
    const [client, earlier, ...found] = await lookBefore(tx, clientId, body);
    if (!client) throw new AppError('not-found', 'This client is not here.');
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
    const [consents, rungs, same] = found;
    assertConsented(consents);
    assertDateFits(body, now);
    assertSetsFit(body, rungs);
    const corrected = await findCorrected(tx, clientId, body);
    assertFirstOfSession(body, same);
    await keep(tx, { clientId, body, bodyHash, now, under18: client.under18, corrected });
    return answer(body, now, client.under18);
  };
  return withTeamPg(actor.scope, submit, { named: true }); // the same statements for every phone of an evening
}

/**
 * What decides whether a check-in is kept, in one look. The lock comes first: whoever sends the same id at the same
 * moment waits there, and what is asked behind it sees what the other left.
 */
function lookBefore(tx: TeamPg, clientId: string, body: CheckInBody) {
  const { date, session, correctsId: exceptId } = body;
  return Promise.all([
    lockClient(tx, clientId),
    findSubmitted(tx, body.id),
    holdsConsent(tx, clientId, CONSENT_VERSION),
    listHistoryRungs(tx, [...new Set(body.sets.map((set) => set.rungId))]),
    body.kind !== 'training' || session === null
      ? undefined
      : findSameSession(tx, { clientId, date, session, exceptId }),
  ]);
}

type Corrected = { id: string; date: string };
type Kept = {
  clientId: string;
  body: CheckInBody;
  bodyHash: string;
  now: Date;
  under18: boolean;
  corrected: Corrected | null;
};

async function keep(tx: TeamPg, { clientId, body, bodyHash, now, under18, corrected }: Kept): Promise<void> {
  const sentAt = body.sentAt ? new Date(Math.min(Date.parse(body.sentAt), now.getTime())) : now;
  await Promise.all([
    corrected && markReplaced(tx, corrected.id, now),
    insertCheckIn(tx, { ...body, clientId, bodyHash, sentAt, receivedAt: now }, body),
    corrected && carryVerdicts(tx, { from: corrected.id, to: body.id }),
    body.kind === 'training' && endOpenAbsences(tx, clientId, body.date),
    body.question && insertQuestion(tx, { clientId, checkInId: body.id, text: body.question, at: now }),
    insertAfterCheckIn(tx, { clientId, checkInId: body.id }),
    rebuildRollups(tx, clientId, corrected ? [body.date, corrected.date] : [body.date]),
  ]);
  if (isUrgent(body, under18)) await raiseUrgent(tx, clientId, now);
  if (isForGuardians(body)) {
    const first = corrected ? await findFirstVersion(tx, corrected.id) : body.id;
    await tellGuardians(tx, { clientId, key: first, told: body, now });
  }
}

/** The check-in that this one corrects. */
async function findCorrected(tx: TeamPg, clientId: string, body: CheckInBody): Promise<Corrected | null> {
  if (!body.correctsId) return null;
  const found = await findOwn(tx, clientId, body.correctsId);
  if (!found) throw new AppError('not-found', 'The check-in to correct is not here.');
  if (found.replaced) {
    throw new AppError('conflict', 'This check-in was corrected already. Correct the newest one.', {
      fields: { correctsId: 'names a check-in that is corrected already: use the id of its correction' },
    });
  }
  return { id: body.correctsId, date: found.date };
}

/** A phone that crossed a date line must not make one session two. */
function assertFirstOfSession({ session, date }: CheckInBody, same: string | undefined): void {
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
