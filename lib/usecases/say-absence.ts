import type { Actor } from '#lib/auth/actor.ts';
import { insertAbsence } from '#lib/db/absences.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { forgetOutcomes } from '#lib/db/outcomes.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import type { AbsenceBody } from '#lib/schemas/absence.ts';
import { assertConsent } from './rights/assert-consent.ts';

/** Said up to this many days before and after: a year (own choice). */
const YEAR_DAYS = 366;

/** Keeps a holiday, a pause or an illness: days that are known to be without training. */
export async function sayAbsence(actor: Actor, body: AbsenceBody, now: Date): Promise<{ id: string }> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client says when they are away.');
  const today = localDateOf(now, 'UTC');
  if (body.from < addDays(today, -YEAR_DAYS) || body.from > addDays(today, YEAR_DAYS)) {
    const fix = 'must be within a year of today';
    throw new AppError('invalid', `from: ${fix}`, { fields: { from: fix } });
  }
  const { id, kind, from, to } = body;
  const isKept = await withTeamPg(actor.scope, async (tx) => {
    await assertConsent(tx, clientId);
    await forgetOutcomes(tx, clientId, { from, to: to ?? today });
    return insertAbsence(tx, { id, clientId, kind, from, to, saidAt: now });
  });
  if (!isKept)
    throw new AppError('conflict', 'An absence with this id is kept already, with other contents.');
  return { id };
}
