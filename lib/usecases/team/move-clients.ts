import type { Actor } from '#lib/auth/actor.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { insertMoves, lockClientCoaches, lockMoves, markMoveRead, takeBackMoves } from '#lib/db/moves.ts';
import { AppError } from '#lib/errors.ts';
import { assertMember } from '../assert-member.ts';
import { presentMember } from './change-role.ts';

export type Moving = { clientIds: readonly string[]; toId: string; note: string };

/** Moves clients to another coach with a note. All or none; a coach moves own clients, a lead everybody's. */
export async function moveClients(actor: Actor, input: Moving, now: Date): Promise<{ moveIds: string[] }> {
  return withTeamPg(actor.scope, async (tx) => ({ moveIds: await moveClientsIn(tx, actor, input, now) }));
}

/** The same inside a transaction that does more. */
export async function moveClientsIn(
  tx: TeamPg,
  actor: Actor,
  { clientIds, toId, note }: Moving,
  now: Date,
): Promise<string[]> {
  const byId = assertMember(actor);
  const to = await presentMember(tx, toId, now);
  if (to.role === 'assistant') throw refused('toId', `${to.name} is an assistant: choose a coach`);
  const clients = await lockClientCoaches(tx, [...new Set(clientIds)]);
  if (clients.length < new Set(clientIds).size)
    throw new AppError('not-found', 'One of these clients is not there, or not in your team.');
  const others = clients.filter(({ coachId }) => actor.role !== 'lead' && coachId !== byId);
  if (others.length > 0)
    throw new AppError('forbidden', `${namesOf(others)}: only the coach who has them or a lead moves them.`);
  const there = clients.filter(({ coachId }) => coachId === toId);
  if (there.length > 0) throw refused('toId', `${to.name} has ${namesOf(there)} already`);
  const ids = clients.map(({ id }) => id);
  const moveIds = await insertMoves(tx, { clientIds: ids, toId, byId, note, at: now });
  for (const clientId of ids)
    await insertAudit(tx, actor, { action: 'client-moved', clientId, objectId: toId, fields: ['coach'] });
  return moveIds;
}

/** Takes moves back while every client is still where they brought them. */
export async function undoMoves(actor: Actor, moveIds: string[], now: Date): Promise<void> {
  await withTeamPg(actor.scope, (tx) => undoMovesIn(tx, actor, moveIds, now));
}

export async function undoMovesIn(tx: TeamPg, actor: Actor, moveIds: string[], now: Date): Promise<void> {
  const byId = assertMember(actor);
  const moves = await lockMoves(tx, [...new Set(moveIds)]);
  if (moves.length < new Set(moveIds).size)
    throw new AppError('not-found', 'This was undone already, or is not of your team.');
  if (actor.role !== 'lead' && moves.some((move) => move.byId !== byId))
    throw new AppError('forbidden', 'Only who moved them or a lead takes this back.');
  const gone = moves.filter((move) => !move.stands);
  if (gone.length > 0)
    throw new AppError(
      'conflict',
      `${gone.map(({ client }) => client).join(', ')}: moved again since, so this cannot be undone.`,
    );
  for (const fromId of new Set(moves.map((move) => move.fromId))) await presentMember(tx, fromId, now);
  await takeBackMoves(tx, moveIds);
  for (const { clientId, fromId } of moves)
    await insertAudit(tx, actor, { action: 'move-undone', clientId, objectId: fromId, fields: ['coach'] });
}

/** The coach has read the note that came with a client. */
export async function readMove(actor: Actor, moveId: string, now: Date): Promise<void> {
  const memberId = assertMember(actor);
  await withTeamPg(actor.scope, async (tx) => {
    if (await markMoveRead(tx, { moveId, memberId, at: now })) return;
    throw new AppError('not-found', 'This note is not yours to read, or was read already.');
  });
}

const NAMES_SHOWN = 5;

function namesOf(clients: { name: string }[]): string {
  const names = clients.map(({ name }) => name).sort((a, b) => a.localeCompare(b));
  const shown = names.slice(0, NAMES_SHOWN);
  const more = names.length - shown.length;
  return more > 0 ? `${shown.join(', ')} and ${more} more` : shown.join(', ');
}

function refused(field: string, message: string): AppError {
  return new AppError('invalid', `${field}: ${message}`, { fields: { [field]: message } });
}
