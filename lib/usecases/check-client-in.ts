import type { Limits } from '#lib/checks/thresholds.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { isConsentWithdrawn } from '#lib/db/consents.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { countFinishedNights } from '#lib/db/ledger.ts';
import { insertOutcomes } from '#lib/db/outcomes.ts';
import { listReasons } from '#lib/db/reasons.ts';
import { listSettings } from '#lib/db/settings.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { dueOutcomes, outcomesOf } from './follow-outcomes.ts';
import { judgeClient } from './judge-client.ts';
import { writeJudgements } from './write-judgements.ts';

type Asked = {
  clientId: string;
  now: Date;
  /** Only these kinds; all when left out. */
  only?: readonly CheckKind[];
};

/**
 * The night's own checks for one client, inside a transaction that is open already, as of the client's today. Raises
 * and updates; never counts a clear night and never closes, because the day is not over. Returns how many changed.
 */
export async function checkClientIn(tx: TeamPg, { clientId, now, only }: Asked): Promise<number> {
  const utcDate = now.toISOString().slice(0, 10);
  const from = addDays(utcDate, -HISTORY_DAYS);
  const settings = await listSettings(tx, [clientId]);
  const history = (
    await loadHistories(tx, [clientId], { from, asOf: utcDate, limits: settings.team.limits })
  ).get(clientId);
  if (!history || history.client.standing === 'left') return 0;
  if (await isConsentWithdrawn(tx, clientId)) return 0;
  const stored = (await listReasons(tx, [clientId])).get(clientId) ?? [];
  const asOf = { date: localDateOf(now, history.client.zone), instant: now.toISOString() };
  const judgement = judgeClient(history, stored, asOf, {
    ...settings.of(clientId),
    nightsDone: await countFinishedNights(tx, clientId),
  });
  const changes = judgement.changes.filter((change) => {
    if (change.change === 'count-clear' || change.change === 'close') return false;
    return !only || only.includes(change.outcome.kind);
  });
  await writeJudgements(tx, [{ judgement: { ...judgement, changes, counted: [] }, asOf, stored }], null);
  if (!only)
    await tellAgain(tx, history, { yesterday: addDays(asOf.date, -1), now, ...settings.of(clientId) });
  return changes.length;
}

/** A corrected check-in took back what was told of the windows around it: they are told again at once. */
async function tellAgain(
  tx: TeamPg,
  history: ClientHistory,
  { yesterday, now, limits }: { yesterday: string; now: Date; limits: Limits },
): Promise<void> {
  const { id } = history.client;
  const due = await dueOutcomes(tx, [id], yesterday, () => limits);
  await insertOutcomes(tx, outcomesOf(history, due.get(id) ?? [], yesterday, limits), now);
}
