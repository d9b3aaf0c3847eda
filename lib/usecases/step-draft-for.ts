import { buildView } from '#lib/checks/view.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { listHistoryRungs } from '#lib/db/history-rungs.ts';
import { listSettings } from '#lib/db/settings.ts';
import { listLadderRungIds } from '#lib/db/step-records.ts';
import type { HistoryPlan, HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { stepDraft } from '#lib/planning/step-draft.ts';
import type { DraftReason, StepDraft } from '#lib/planning/steps/step-types.ts';

/**
 * The draft of an open reason's proposed step and the version of the plan it was made from (0: no plan yet); undefined
 * where there is nothing to draft. `today` is the client's own day.
 */
export async function stepDraftFor(
  tx: TeamPg,
  about: { clientId: string; reason: DraftReason; today: string },
): Promise<{ draft: StepDraft; plan: HistoryPlan | undefined; planVersion: number } | undefined> {
  const { clientId, reason, today } = about;
  const histories = await loadHistories(tx, [clientId], { from: addDays(today, -HISTORY_DAYS) });
  const history = histories.get(clientId);
  if (!history) return undefined;
  const { ladderId } = reason.subject;
  const ids = ladderId === undefined ? [] : await listLadderRungIds(tx, ladderId);
  const ladder = ids.length === 0 ? [] : await listHistoryRungs(tx, ids);
  const inUse = new Set(ids);
  const isOffered = (rung: HistoryRung) => rung.ladderId !== ladderId || inUse.has(rung.id);
  const plan = [...history.plans].sort((a, b) => b.version - a.version)[0];
  const { limits } = (await listSettings(tx, [clientId])).of(clientId);
  const draft = stepDraft(reason, {
    view: buildView(history, { date: today, instant: `${today}T23:59:59.000Z` }, limits),
    plan,
    today,
    rungs: new Map([...history.rungs, ...ladder].filter(isOffered).map((rung) => [rung.id, rung])),
    limits,
  });
  return draft && { draft, plan, planVersion: plan?.version ?? 0 };
}
