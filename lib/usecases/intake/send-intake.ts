import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findIsMinor } from '#lib/db/clients.ts';
import { insertGuardian, listGuardians } from '#lib/db/guardians.ts';
import { completeIntake, findIntake, saveStartFacts } from '#lib/db/intakes.ts';
import { canonicalJson } from '#lib/domain/canonical-json.ts';
import { type Caution, cautionsOf } from '#lib/domain/caution.ts';
import { type IntakeAnswers, toldWeekAu } from '#lib/domain/intake/answers.ts';
import { type IntakeDraft, mergeDrafts } from '#lib/domain/intake/draft.ts';
import { readIntake } from '#lib/domain/intake/read-intake.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type IntakeSent, type KeptAnswers, type KeptChange, keptAnswers } from '#lib/schemas/intake.ts';
import { tellGuardians } from '../guardians/tell-guardians.ts';
import { raiseUrgent } from '../raise-urgent.ts';
import { assertConsent } from '../rights/assert-consent.ts';
import { sentWhen } from './asked-anew.ts';
import { holdTold } from './hold-told.ts';
import { keptDraft } from './load-intake.ts';
import { alreadySent, notAhead } from './save-intake-draft.ts';

export type IntakeAnswered = { sentAt: string; cautions: Caution[] };

/**
 * Takes the whole intake, once: the same key again gets the same answer. Each yes to a health question holds what is
 * upside down, each danger sign the plan, in the same transaction; a danger sign is on the board with it.
 */
export async function sendIntake(actor: Actor, sent: IntakeSent, now: Date): Promise<IntakeAnswered> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client sends this.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await lockClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    await assertConsent(tx, clientId);
    const before = await findIntake(tx, clientId);
    if (before?.completedAt && before.sentKey === sent.key)
      return answered(keptAnswers.parse(before.answers), { under18: client.under18, at: before.completedAt });
    if (await sentWhen(tx, before, { clientId, zone: client.zone, now })) throw alreadySent();
    const draft = mergeDrafts(keptDraft(before?.draft), notAhead(sent.draft, now));
    const today = localDateOf(now, client.zone);
    const answers = await wholeAnswers(tx, { clientId, draft, today, now });
    const changes = before?.completedAt
      ? toldAgain(before.answers, answers, { by: actor.name, at: now })
      : [];
    await completeIntake(tx, { clientId, answers, key: sent.key, changes, at: now });
    await keepFacts(tx, { clientId, draft, answers, today, now });
    await insertAudit(tx, actor, { action: 'intake-sent', clientId, fields: [] });
    if (answers.dangerSigns.length > 0) await raiseUrgent(tx, clientId, now);
    await tellGuardians(tx, { clientId, key: `intake:${sent.key}`, told: toldOf(answers), now });
    return answered(answers, { under18: client.under18, at: now });
  });
}

/** The same however often it is asked for: an answer that got lost on the way says its cautions again. */
function answered(answers: KeptAnswers, { under18, at }: { under18: boolean; at: Date }): IntakeAnswered {
  const cautions = cautionsOf(toldOf(answers), under18 || answers.adult === false);
  return { sentAt: at.toISOString(), cautions };
}

/** What differs from what was told before a long break, in the form of every change. */
function toldAgain(
  stored: unknown,
  answers: IntakeAnswers,
  { by, at }: { by: string; at: Date },
): KeptChange[] {
  const before = (stored ?? {}) as Record<string, KeptChange['before'] | undefined>;
  return Object.entries(answers).flatMap(([field, after]) =>
    canonicalJson(before[field] ?? null) === canonicalJson(after ?? null)
      ? []
      : [
          {
            at: at.toISOString(),
            by,
            field,
            before: before[field] ?? null,
            after: (after ?? null) as KeptChange['after'],
            why: 'told again after twelve weeks or more away',
          },
        ],
  );
}

type Filled = { clientId: string; draft: IntakeDraft; today: string; now: Date };

async function wholeAnswers(tx: TeamPg, { clientId, draft, today, now }: Filled): Promise<IntakeAnswers> {
  const read = readIntake(draft, {
    now: now.toISOString(),
    year: Number(today.slice(0, 4)),
    guardianNamed: (await listGuardians(tx, clientId)).length > 0,
  });
  if ('answers' in read) return read.answers;
  const fields = Object.fromEntries(read.refusals.map(({ field, message }) => [field, message]));
  throw new AppError(
    'invalid',
    'Some of it is missing or cannot be. Nothing was sent; what you told is kept.',
    {
      fields,
    },
  );
}

async function keepFacts(
  tx: TeamPg,
  { clientId, draft, answers, today, now }: Filled & { answers: IntakeAnswers },
): Promise<void> {
  await saveStartFacts(tx, clientId, {
    under18: !answers.adult,
    birthYear: answers.birthYear,
    bodyMassKg: answers.bodyMassKg,
    toldWeekAu: toldWeekAu(answers.week),
    usualSessionMinutes: answers.week.minutes > 0 ? Math.round(answers.week.minutes) : null,
    goal: answers.goal === '' ? answers.skills.join(', ') : answers.goal,
  });
  const told = [...answers.dangerSigns.map((sign) => `sign:${sign}` as const), ...answers.health];
  await holdTold(tx, { clientId, told, from: today, at: now });
  const you = draft.you?.page;
  const name = you?.guardianName.trim() ?? '';
  if (!(await findIsMinor(tx, clientId)) || name === '') return;
  const named = await listGuardians(tx, clientId);
  if (named.some((one) => one.name === name)) return;
  await insertGuardian(tx, { clientId, name, email: you?.guardianEmail.trim() || null, at: now });
}

/** The answers as a check-in would tell them. */
function toldOf({ pain = [], dangerSigns = [] }: KeptAnswers): Parameters<typeof cautionsOf>[0] {
  return {
    pain: pain.map(({ region, side, value }) => ({ region, side, value, kind: 'joint' as const })),
    dangerSigns: dangerSigns.map((sign) => ({ sign, region: null, side: null })),
  };
}
