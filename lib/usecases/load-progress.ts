import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findPhoneClient, listLaddersOf, listRecentCheckIns, listStanding } from '#lib/db/phone-reads.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type LadderProgress, ladderProgress } from '#lib/views/phone-progress.ts';

const LAST_TIME_DAYS = 90;

export type Progress = { clientId: string; teamName: string; date: string; ladders: LadderProgress[] };

/** The client's own ladders: where they stand and what is left. Nothing about others, nothing about being late. */
export async function loadProgress(actor: Actor, now: Date): Promise<Progress> {
  const { clientId } = actor;
  if (!clientId) throw new AppError('forbidden', 'Only a client has ladders of their own.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw new AppError('not-found', 'This client is not here.');
    const date = localDateOf(now, client.zone);
    const recent = await listRecentCheckIns(tx, clientId, addDays(date, -LAST_TIME_DAYS));
    const rungs = await listLaddersOf(tx, clientId);
    const standing = await listStanding(tx, clientId, date);
    return { clientId, teamName: client.teamName, date, ladders: ladderProgress(rungs, standing, recent) };
  });
}
