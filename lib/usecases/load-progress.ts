import type { Actor } from '#lib/auth/actor.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { findPhoneClient, listLaddersOf, listRecentCheckIns, listStanding } from '#lib/db/phone-reads.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type LadderProgress, ladderProgress } from '#lib/views/phone-progress.ts';
import { wordsAbout } from '#lib/views/phone-words.ts';

const LAST_TIME_DAYS = 90;

/** The newest words of a coach on a set of this ladder. */
type LadderSaid = { said: { on: string; text: string; by: string } | null };
export type Progress = {
  clientId: string;
  teamName: string;
  date: string;
  ladders: (LadderProgress & LadderSaid)[];
};

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
    const written = await listCheckInWords(tx, clientId, addDays(date, -LAST_TIME_DAYS));
    const ladderOf = new Map(rungs.map((rung) => [rung.rungId, rung.ladderId]));
    const ladders = ladderProgress(rungs, standing, recent).map((ladder) => {
      const word = written.findLast(({ set }) => set && ladderOf.get(set.rungId) === ladder.ladderId);
      return { ...ladder, said: word ? { on: wordsAbout(word), text: word.text, by: word.by } : null };
    });
    return { clientId, teamName: client.teamName, date, ladders };
  });
}
