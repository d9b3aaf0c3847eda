import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import { listActClients } from '#lib/db/acts.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import type { ManyAct } from '#lib/schemas/board.ts';
import { actOnClient } from './act-on-client.ts';
import { assertMember } from './assert-member.ts';

export type ManyDone = {
  actId: string;
  line: string;
  done: { clientId: string; line: string }[];
  /** Rows that stay where they are, with why. */
  left: { clientId: string; name: string; why: string }[];
};

/**
 * Puts many rows aside in one act with one undo. Rows with a danger sign or pain of 6 or more stay, and so do rows with
 * nothing open any more; both are said by name.
 */
export async function putAsideMany(actor: Actor, input: ManyAct, now: Date): Promise<ManyDone> {
  const memberId = assertMember(actor);
  const { clientIds, until, date, words } = input;
  return withTeamPg(actor.scope, async (tx) => {
    const { today, zone } = await findBoardHead(tx, memberId, now);
    const clients = await listActClients(tx, [...new Set(clientIds)]);
    if (clients.length < new Set(clientIds).size)
      throw new AppError('not-found', 'One of these clients is not there, or not in your team.');
    const acting = { actor: { ...actor, memberId }, actId: randomUUID(), today, zone, now };
    const done: ManyDone['done'] = [];
    const left: ManyDone['left'] = [];
    for (const { clientId, name, kinds } of clients) {
      const why = whyLeft(kinds);
      if (why) left.push({ clientId, name, why });
      else {
        const body = { act: 'put-aside' as const, clientId, until, words, ...(date && { date }) };
        done.push({ clientId, line: (await actOnClient(tx, body, acting)).line });
      }
    }
    if (done.length === 0) throw new AppError('conflict', `Nothing was put aside. ${inWords(left)}`.trim());
    return { actId: acting.actId, line: lineOf(done.length, left), done, left };
  });
}

function whyLeft(kinds: string[]): string | undefined {
  if (kinds.length === 0) return 'nothing is open that can be put aside';
  if (URGENT_KINDS.some((kind) => kinds.includes(kind))) return 'a danger sign or pain of 6 or more';
  return undefined;
}

function lineOf(count: number, left: ManyDone['left']): string {
  const aside = `${count === 1 ? '1 client' : `${count} clients`} put aside.`;
  return left.length === 0 ? aside : `${aside} ${inWords(left)}`;
}

function inWords(left: ManyDone['left']): string {
  return left.length === 0 ? '' : `Left: ${left.map(({ name, why }) => `${name} (${why})`).join(', ')}.`;
}
