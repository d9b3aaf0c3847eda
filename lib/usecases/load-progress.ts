import type { Actor } from '#lib/auth/actor.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { buildView } from '#lib/checks/view.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { findPhoneClient, listLaddersOf, listRecentCheckIns, listStanding } from '#lib/db/phone-reads.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { type WindowEdges, windowEdges } from '#lib/views/phone-edges.ts';
import { type LadderProgress, ladderProgress } from '#lib/views/phone-progress.ts';
import { type SidesOfRung, sidesOfRungs } from '#lib/views/phone-sides.ts';
import { wordsAbout } from '#lib/views/phone-words.ts';
import { ownPlanChanges, type PlanChange } from './own-plan-changes.ts';

const LAST_TIME_DAYS = 90;

/** The newest words of a coach on a set of this ladder. */
type LadderSaid = { said: { on: string; text: string; by: string } | null };
export type Progress = {
  clientId: string;
  teamName: string;
  date: string;
  ladders: (LadderProgress & LadderSaid)[];
  /** The balance window, and left against right, over the last days of each. */
  edges: WindowEdges[];
  sides: SidesOfRung[];
  changes: PlanChange[];
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
    const view = await ownView(tx, clientId, { date, now });
    return {
      clientId,
      teamName: client.teamName,
      date,
      ladders,
      edges: view ? windowEdges(view, DEFAULT_LIMITS) : [],
      sides: view ? sidesOfRungs(view, DEFAULT_LIMITS) : [],
      changes: await ownPlanChanges(tx, clientId, date),
    };
  });
}

/** The client's own days as the checks see them; undefined: this client is gone. */
async function ownView(
  tx: TeamPg,
  clientId: string,
  { date, now }: { date: string; now: Date },
): Promise<ClientView | undefined> {
  const histories = await loadHistories(tx, [clientId], { from: addDays(date, -LAST_TIME_DAYS) });
  const history = histories.get(clientId);
  return history && buildView(history, { date, instant: now.toISOString() });
}
