import type { Actor } from '#lib/auth/actor.ts';
import { buildLongView } from '#lib/checks/view.ts';
import { listCheckInWords } from '#lib/db/check-in-words.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClient, listNotes, listSeen, type NoteRow } from '#lib/db/clients.ts';
import { listReasonsLeftAlone, listStepsTaken } from '#lib/db/followed-steps.ts';
import { listGuardians } from '#lib/db/guardians.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listLimits } from '#lib/db/limits.ts';
import { listPlannableRungs } from '#lib/db/plans.ts';
import { listCorrectedCheckIns, listDeletedCheckIns } from '#lib/db/raw-check-ins.ts';
import { listClosedReasons } from '#lib/db/reason-history.ts';
import { listReasons, type ReasonRow } from '#lib/db/reasons.ts';
import { listSettings } from '#lib/db/settings.ts';
import { listToldHolds } from '#lib/db/told-holds.ts';
import { guardiansAgree } from '#lib/domain/intake/guardian-text.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { type ClientPage, clientPage, pageDate } from '#lib/views/client-page.ts';
import { type PastReasonLine, pastReasons } from '#lib/views/client-past-reasons.ts';
import { waitsInWords } from '#lib/views/intake/board-lines.ts';
import { limitInPlan } from '#lib/views/limit-in-plan.ts';
import { type LimitLine, limitLines } from '#lib/views/limit-lines.ts';
import { type StepTried, stepsTried } from '#lib/views/steps/steps-tried.ts';

export type ClientLoaded = {
  page: ClientPage;
  standing: Standing;
  joined: boolean;
  notes: NoteRow[];
  limits: LimitLine[];
  /** What of the start waits, as a sentence; empty: nothing. */
  waits: string;
  /** Steps taken, newest first, with what became of them. */
  tried: StepTried[];
  /** Reasons that are closed, newest first. */
  past: PastReasonLine[];
};

const PAST_SHOWN = 40;

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
    const view = buildLongView(history, { date, instant: now.toISOString() }, limits);
    const page = clientPage({
      limits,
      view,
      reasons: await openReasons(tx, clientId),
      ladderRungs: await listPlannableRungs(tx),
      seen: await listSeen(tx, clientId),
      deleted: await listDeletedCheckIns(tx, clientId, addDays(today, -HISTORY_DAYS)),
      corrected: await listCorrectedCheckIns(tx, clientId, from),
      words: await listCheckInWords(tx, clientId, addDays(today, -HISTORY_DAYS)),
      goal: client.goal,
      now,
    });
    const steps = await listStepsTaken(tx, { clientId, from, to: today });
    const alone = await listReasonsLeftAlone(tx, { clientId, from, to: today });
    const closed = await listClosedReasons(tx, clientId, PAST_SHOWN);
    return {
      page,
      tried: stepsTried(steps, today, limits),
      past: pastReasons(closed, { steps, alone }, { zone: client.zone, today }),
      waits: await startWaits(tx, client, today),
      standing: client.standing,
      joined: client.joinedAt !== null,
      notes: await listNotes(tx, clientId),
      limits: limitLines(await listLimits(tx, clientId), today, (limit) =>
        limitInPlan(limit, view.planOn(today), view.rungs, today),
      ),
    };
  });
}

async function startWaits(
  tx: TeamPg,
  { id, name, under18 }: { id: string; name: string; under18: boolean },
  today: string,
): Promise<string> {
  const holds = await listToldHolds(tx, id, today);
  const agree = !under18 || guardiansAgree(await listGuardians(tx, id));
  return waitsInWords({
    name,
    told: holds.filter(({ from }) => from <= today).map(({ told }) => told),
    agree,
  });
}

async function openReasons(tx: TeamPg, clientId: string): Promise<ReasonRow[]> {
  const all = (await listReasons(tx, [clientId])).get(clientId) ?? [];
  return all.filter((reason) => reason.closedAt === null);
}
