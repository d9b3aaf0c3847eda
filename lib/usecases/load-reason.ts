import type { Actor } from '#lib/auth/actor.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type ClientRow, findClient } from '#lib/db/clients.ts';
import { listReasonsLeftAlone, listStepsTaken } from '#lib/db/followed-steps.ts';
import { findReason, type OneReason } from '#lib/db/reason-history.ts';
import { listSettings } from '#lib/db/settings.ts';
import { countVerdicts } from '#lib/db/verdict-counts.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { type StepTried, stepsTried } from '#lib/views/steps/steps-tried.ts';
import { type WindowSaid, windowsSaid } from '#lib/views/steps/windows-said.ts';

export type ReasonLoaded = {
  client: ClientRow;
  reason: OneReason;
  /** Steps taken for it, with what their windows came to. */
  tried: StepTried[];
  /** What became of it where nothing was done; empty: a step was taken, or no window of it is over. */
  alone: WindowSaid[];
  /** What the team's coaches said of reasons of this kind. */
  verdicts: { right: number; notNeeded: number };
};

/** One reason, open or closed, with its working and what became of it; undefined: no such client or reason here. */
export function loadReason(
  actor: Actor,
  { clientId, reasonId }: { clientId: string; reasonId: string },
  now: Date,
): Promise<ReasonLoaded | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const client = await findClient(tx, clientId);
    const reason = client && (await findReason(tx, clientId, reasonId));
    if (!client || !reason) return undefined;
    const today = localDateOf(now, client.zone);
    const { limits } = (await listSettings(tx, [clientId])).of(clientId);
    const asked = { clientId, kind: reason.kind, from: EVER, to: today };
    const ofThis = <Row extends { reasonId: string | null }>(rows: Row[]) =>
      rows.filter((row) => row.reasonId === reasonId);
    const steps = ofThis(await listStepsTaken(tx, asked));
    const [left] = ofThis(await listReasonsLeftAlone(tx, asked));
    const counts = (await countVerdicts(tx, null)).find((one) => one.kind === reason.kind);
    return {
      client,
      reason,
      tried: stepsTried(steps, today, limits),
      alone: left ? windowsSaid(left, today, limits).filter((one) => one.outcome !== 'not-yet') : [],
      verdicts: { right: counts?.right ?? 0, notNeeded: counts?.notNeeded ?? 0 },
    };
  });
}

const EVER = '2000-01-01';
