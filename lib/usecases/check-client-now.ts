import type { ReasonChange } from '#lib/checks/types.ts';
import { type TeamScope, withTeamPg } from '#lib/db/client.ts';
import { HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { countFinishedNights, lockClients } from '#lib/db/ledger.ts';
import { listReasons } from '#lib/db/reasons.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { judgeClient } from './judge-client.ts';
import { CLOSED_LOOK_BACK_DAYS } from './run-night-batch.ts';
import { writeJudgements } from './write-judgements.ts';

const DAY_MS = 86_400_000;

/**
 * The night's own checks for one client at once, as of the client's today. Raises and updates; never counts a clear
 * night and never closes, because the day is not over. Returns how many reasons changed.
 */
export async function checkClientNow(scope: TeamScope, clientId: string, now: Date): Promise<number> {
  return withTeamPg(scope, async (tx) => {
    await lockClients(tx, [clientId]);
    const from = addDays(now.toISOString().slice(0, 10), -HISTORY_DAYS);
    const history = (await loadHistories(tx, [clientId], { from })).get(clientId);
    if (!history || history.client.standing === 'paused' || history.client.standing === 'left') return 0;
    const since = new Date(now.getTime() - CLOSED_LOOK_BACK_DAYS * DAY_MS);
    const stored = (await listReasons(tx, [clientId], since)).get(clientId) ?? [];
    const asOf = { date: localDateOf(now, history.client.zone), instant: now.toISOString() };
    const judgement = judgeClient(history, stored, asOf, await countFinishedNights(tx, clientId));
    const changes = judgement.changes.filter(raisesOrUpdates);
    await writeJudgements(tx, [{ judgement: { ...judgement, changes, counted: [] }, asOf, stored }], null);
    return changes.length;
  });
}

function raisesOrUpdates(change: ReasonChange): boolean {
  return change.change !== 'count-clear' && change.change !== 'close';
}
