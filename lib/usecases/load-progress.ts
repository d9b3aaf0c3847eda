import type { Actor } from '#lib/auth/actor.ts';
import { buildLongView } from '#lib/checks/view.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { loadHistories } from '#lib/db/histories.ts';
import { findPhoneClient, listLaddersOf } from '#lib/db/phone-reads.ts';
import { listSettings } from '#lib/db/settings.ts';
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
  const missing = () => new AppError('not-found', 'This client is not here.');
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findPhoneClient(tx, clientId);
    if (!client) throw missing();
    const date = localDateOf(now, client.zone);
    const from = addDays(date, -LAST_TIME_DAYS);
    const history = (await loadHistories(tx, [clientId], { from })).get(clientId);
    if (!history) throw missing();
    const { limits } = (await listSettings(tx, [clientId])).of(clientId);
    const view = buildLongView(history, { date, instant: now.toISOString() }, limits);
    const newestFirst = view.days.flatMap(({ checkIns }) => checkIns).reverse();
    const rungs = await listLaddersOf(tx, clientId);
    const written = await listCheckInWords(tx, clientId, from);
    const ladderOf = new Map(rungs.map((rung) => [rung.rungId, rung.ladderId]));
    const ladders = ladderProgress(rungs, view.standing, newestFirst).map((ladder) => {
      const word = written.findLast(({ set }) => set && ladderOf.get(set.rungId) === ladder.ladderId);
      return { ...ladder, said: word ? { on: wordsAbout(word), text: word.text, by: word.by } : null };
    });
    return {
      clientId,
      teamName: client.teamName,
      date,
      ladders,
      edges: windowEdges(view, limits),
      sides: sidesOfRungs(view, limits),
      changes: await ownPlanChanges(tx, clientId, date),
    };
  });
}
