import { randomUUID } from 'node:crypto';
import { stateAfter } from '#lib/checks/state-after.ts';
import { RULES_VERSION } from '#lib/checks/thresholds.ts';
import type { ReasonChange } from '#lib/checks/types.ts';
import type { TeamPg } from '#lib/db/client.ts';
import {
  insertReasonEvents,
  insertReasons,
  type NewReason,
  type NewReasonEvent,
  type ReasonContents,
  type ReasonRest,
  type ReasonRow,
  updateReasonContents,
  updateReasonRest,
} from '#lib/db/reasons.ts';
import type { AsOf, Flagged } from '#lib/domain/finding.ts';
import type { Judgement } from './judge-client.ts';

export type JudgedClient = { judgement: Judgement; asOf: AsOf; stored: ReasonRow[] };

type Writes = {
  raised: NewReason[];
  contents: ReasonContents[];
  rest: ReasonRest[];
  events: NewReasonEvent[];
};

/** Writes what changed about many clients' reasons: four statements, whatever the number; none for what stays. */
export async function writeJudgements(
  tx: TeamPg,
  judged: JudgedClient[],
  night: string | null,
): Promise<void> {
  const writes: Writes = { raised: [], contents: [], rest: [], events: [] };
  for (const client of judged) gather(client, night, writes);
  const inserted = await insertReasons(tx, writes.raised);
  await updateReasonContents(tx, writes.contents);
  await updateReasonRest(tx, writes.rest);
  const notInserted = new Set(writes.raised.map((reason) => reason.id).filter((id) => !inserted.has(id)));
  await insertReasonEvents(
    tx,
    writes.events.filter((event) => !notInserted.has(event.reasonId)),
  );
}

function gather({ judgement, asOf, stored }: JudgedClient, night: string | null, writes: Writes): void {
  const at = asOf.instant;
  const { settingsVersion } = judgement;
  const event = (reasonId: string, what: NewReasonEvent['what'], outcome: Flagged | null, why?: string) =>
    writes.events.push({
      reasonId,
      at,
      night,
      what,
      level: outcome?.level ?? null,
      body: { ...(outcome && { kind: outcome.kind, tier: outcome.tier }), ...(why && { why }) },
    });
  const stateOf = (id: string) => stored.find((reason) => reason.id === id)?.state ?? 'open';
  const counted = new Set(judgement.counted.map((each) => each.id));
  const contents = (id: string, outcome: Flagged, back: boolean, worse = false) => {
    const state = stateAfter({
      before: stateOf(id),
      outcome,
      back,
      counted: counted.has(id),
      early: judgement.early,
    });
    writes.contents.push({
      id,
      state,
      outcome,
      at,
      rulesVersion: RULES_VERSION,
      settingsVersion,
      back,
      worse,
    });
  };

  for (const change of judgement.changes) {
    if (change.change === 'raise') {
      const raised = toNewReason(judgement, change, asOf);
      writes.raised.push(raised);
      event(raised.id, 'raised', change.outcome);
    } else if (change.change === 'count-clear') {
      writes.rest.push({ id: change.id, clearNights: change.clearNights, closedWhy: null, at });
    } else if (change.change === 'close') {
      writes.rest.push({ id: change.id, clearNights: 0, closedWhy: change.why, at });
      event(change.id, 'closed', null, change.why);
    } else {
      const worse = change.change === 'update' && change.worse;
      contents(change.id, change.outcome, change.change !== 'update', worse);
      if (change.change === 'reopen') event(change.id, 'reopened', change.outcome);
      if (change.change === 'back') event(change.id, 'back', change.outcome, change.why);
      if (change.change === 'update' && change.worse) event(change.id, 'worse', change.outcome);
    }
  }
  for (const { id, outcome } of judgement.counted) {
    if (!writes.contents.some((each) => each.id === id)) contents(id, outcome, false);
    event(id, 'counted', outcome);
  }
}

function toNewReason(
  { clientId, settingsVersion }: Judgement,
  change: ReasonChange & { change: 'raise' },
  asOf: AsOf,
): NewReason {
  return {
    id: randomUUID(),
    clientId,
    state: change.onClientPageOnly ? 'client-page' : 'open',
    outcome: change.outcome,
    at: asOf.instant,
    rulesVersion: RULES_VERSION,
    settingsVersion,
    knownFrom: asOf.date,
  };
}
