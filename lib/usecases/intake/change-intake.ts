import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { changeIntakeAnswers, findIntake, saveStartFacts } from '#lib/db/intakes.ts';
import { toldWeekAu } from '#lib/domain/intake/answers.ts';
import { isUnder18 } from '#lib/domain/intake/read-intake.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type IntakeChange, type KeptAnswers, keptAnswers } from '#lib/schemas/intake.ts';
import { assertMember } from '../assert-member.ts';
import { holdTold } from './hold-told.ts';

/**
 * Changes one answer after it was sent, on the client's word to the coach. The answer before stays beside it, with who
 * and why. A yes to a health question can be added and holds at once; taken back it is by a clinician's word only.
 */
export async function changeIntake(
  actor: Actor,
  { clientId, change }: { clientId: string; change: IntakeChange },
  now: Date,
): Promise<void> {
  assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const intake = await findIntake(tx, clientId);
    if (!intake?.completedAt)
      throw new AppError('conflict', 'Nothing was sent yet: there is nothing to change.');
    const stored = (intake.answers ?? {}) as Record<string, unknown>;
    const answers = keptAnswers.parse(stored);
    const { key, before, after } = changed(answers, change);
    if (JSON.stringify(before) === JSON.stringify(after))
      throw new AppError('invalid', 'This is what was told already.', {
        fields: { value: 'is what was told already' },
      });
    await changeIntakeAnswers(tx, {
      clientId,
      answers: { ...stored, [key]: after },
      change: { at: now.toISOString(), by: actor.name, field: key, before, after, why: change.why },
    });
    await follow(tx, { clientId, change, today: localDateOf(now, client.zone), now });
    await insertAudit(tx, actor, { action: 'intake-changed', clientId, fields: [key] });
  });
}

type Changed = { key: keyof KeptAnswers; before: unknown; after: unknown };

function changed(answers: KeptAnswers, change: IntakeChange): Changed {
  if (change.field === 'healthYes') {
    const before = answers.health ?? [];
    const after = before.includes(change.value) ? before : [...before, change.value];
    return { key: 'health', before, after };
  }
  return { key: change.field, before: answers[change.field] ?? null, after: change.value };
}

type Followed = { clientId: string; change: IntakeChange; today: string; now: Date };

/** What the rest of the product reads follows. */
async function follow(tx: TeamPg, { clientId, change, today, now }: Followed): Promise<void> {
  if (change.field === 'healthYes')
    await holdTold(tx, { clientId, told: [change.value], from: today, at: now });
  if (change.field === 'week') await saveStartFacts(tx, clientId, { toldWeekAu: toldWeekAu(change.value) });
  if (change.field === 'bodyMassKg') await saveStartFacts(tx, clientId, { bodyMassKg: change.value });
  if (change.field === 'birthYear')
    await saveStartFacts(tx, clientId, {
      birthYear: change.value,
      under18: isUnder18(change.value, Number(today.slice(0, 4))),
    });
}
