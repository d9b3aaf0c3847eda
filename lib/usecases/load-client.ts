import type { Actor } from '#lib/auth/actor.ts';
import { buildView } from '#lib/checks/view.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { type ClientRow, findClient, listNotes, listSeen, type NoteRow } from '#lib/db/clients.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listLimits } from '#lib/db/limits.ts';
import { listPlannableRungs } from '#lib/db/plans.ts';
import { listDeletedCheckIns } from '#lib/db/raw-check-ins.ts';
import { listReasons, type ReasonRow } from '#lib/db/reasons.ts';
import { listSettings } from '#lib/db/settings.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { type ClientPage, clientPage, pageDate } from '#lib/views/client-page.ts';
import { limitInPlan } from '#lib/views/limit-in-plan.ts';
import { type LimitLine, limitLines } from '#lib/views/limit-lines.ts';

export type ClientLoaded = {
  page: ClientPage;
  standing: Standing;
  joined: boolean;
  notes: NoteRow[];
  limits: LimitLine[];
};

/** The client page; undefined: no such client here. */
export function loadClient(actor: Actor, clientId: string, now: Date): Promise<ClientLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    if (!client) return undefined;
    const today = localDateOf(now, client.zone);
    const settings = await listSettings(tx, [clientId]);
    const { limits } = settings.of(clientId);
    const from = addDays(today, -HISTORY_DAYS);
    const history = (
      await loadHistories(tx, [clientId], { from, asOf: today, limits: settings.team.limits })
    ).get(clientId);
    if (!history) return undefined;
    const date = pageDate(
      history.checkIns.map((checkIn) => checkIn.date),
      today,
    );
    const view = buildView(history, { date, instant: now.toISOString() }, limits);
    const page = clientPage({
      limits,
      view,
      reasons: await openReasons(tx, clientId),
      ladderRungs: await listPlannableRungs(tx),
      seen: await listSeen(tx, clientId),
      deleted: await listDeletedCheckIns(tx, clientId, addDays(today, -HISTORY_DAYS)),
      words: await listCheckInWords(tx, clientId, addDays(today, -HISTORY_DAYS)),
      goal: client.goal,
      now,
    });
    return {
      page,
      standing: client.standing,
      joined: client.joinedAt !== null,
      notes: await listNotes(tx, clientId),
      limits: limitLines(await listLimits(tx, clientId), today, (limit) =>
        limitInPlan(limit, view.planOn(today), view.rungs, today),
      ),
    };
  });
}

export type ReasonLoaded = { client: ClientRow; reason: ReasonRow };

/** One open reason with its working; undefined: no such client or reason here. */
export function loadReason(
  actor: Actor,
  input: { clientId: string; reasonId: string },
): Promise<ReasonLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, input.clientId);
    if (!client) return undefined;
    const all = (await listReasons(tx, [input.clientId])).get(input.clientId) ?? [];
    const reason = all.find((one) => one.id === input.reasonId);
    return reason && { client, reason };
  });
}

async function openReasons(tx: TeamPg, clientId: string): Promise<ReasonRow[]> {
  const all = (await listReasons(tx, [clientId])).get(clientId) ?? [];
  return all.filter((reason) => reason.closedAt === null);
}
