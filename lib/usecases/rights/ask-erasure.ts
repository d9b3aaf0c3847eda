import { randomInt } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { lockClient } from '#lib/db/check-ins.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import {
  type ErasureOrigin,
  findErasureAsk,
  insertErasureAsk,
  takeBackErasureAsk,
} from '#lib/db/erasures.ts';
import { AppError } from '#lib/errors.ts';

/** Days in which a wish can be taken back: long enough for a slip to be noticed, well inside a month; own choice. */
export const GRACE_DAYS = 7;
const DAY_MS = 86_400_000;

/** Letters and digits that cannot be taken for one another when a number is read out. */
const SIGNS = 'ABCDEFGHJKMNPQRSTUVWXYZ23456789';

/** A number of 20 random signs (about 99 bits) in four groups: whoever holds it can ask what became of it. */
export function newReceipt(): string {
  const group = () => Array.from({ length: 5 }, () => SIGNS[randomInt(SIGNS.length)] ?? 'A').join('');
  return [group(), group(), group(), group()].join('-');
}

type Wish = { clientId: string; origin: ErasureOrigin; byId: string | null; words: string };

/** The client (or their guardian) asks that everything of theirs be deleted. Asked again: the same receipt. */
export function askErasure(actor: Actor, now: Date): Promise<{ receipt: string }> {
  const { clientId } = actor;
  if (!clientId)
    throw new AppError('forbidden', 'Only a client, or their parent or guardian, asks for this here.');
  const origin = actor.role === 'guardian' ? 'guardian' : 'client';
  return ask(actor, { clientId, origin, byId: null, words: '' }, now);
}

/** The lead asks it for a client, with who asked for it in words. */
export function askErasureOf(
  actor: Actor,
  input: { clientId: string; words: string },
  now: Date,
): Promise<{ receipt: string }> {
  return ask(actor, { ...input, origin: 'lead', byId: actor.memberId }, now);
}

function ask(actor: Actor, wish: Wish, now: Date): Promise<{ receipt: string }> {
  return withTeamPg(actor.scope, async (tx) => {
    if (!(await lockClient(tx, wish.clientId))) throw missing();
    const asked = await findErasureAsk(tx, wish.clientId);
    // A wish of the client comes before the team's own years: it is sooner.
    if (asked && asked.dueAt.getTime() <= now.getTime() + GRACE_DAYS * DAY_MS) return asked;
    if (asked) await takeBackErasureAsk(tx, asked.id, now);
    const receipt = newReceipt();
    await insertErasureAsk(tx, {
      ...wish,
      receipt,
      at: now,
      due: new Date(now.getTime() + GRACE_DAYS * DAY_MS),
    });
    await audit(tx, actor, 'deletion-asked', wish.clientId);
    return { receipt };
  });
}

/** Takes the wish back while there is time. Nothing asked: nothing done. */
export async function takeErasureBack(actor: Actor, clientId: string, now: Date): Promise<void> {
  await withTeamPg(actor.scope, async (tx) => {
    if (!(await lockClient(tx, clientId))) throw missing();
    const asked = await findErasureAsk(tx, clientId);
    if (!asked) return;
    await takeBackErasureAsk(tx, asked.id, now);
    await audit(tx, actor, 'deletion-taken-back', clientId);
  });
}

function audit(tx: TeamPg, actor: Actor, action: string, clientId: string): Promise<void> {
  return insertAudit(tx, actor, { action, clientId, fields: [] });
}

function missing(): AppError {
  return new AppError('not-found', 'This client is not here, or not in your team.');
}
