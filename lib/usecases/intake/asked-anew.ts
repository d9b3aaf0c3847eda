import type { TeamPg } from '#lib/db/client.ts';
import { findLastBeforeBreak, type IntakeRow } from '#lib/db/intakes.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';

/** Away this long somebody starts as new, the questions of the start with it. Common practice, no source. */
const AWAY_DAYS = 84;
/** For so long after the return they are asked. Own choice: the first weeks, twice. */
const ASKED_DAYS = 56;

export type Asking = { clientId: string; zone: string; now: Date };

/** Whether what was sent before a break of twelve weeks or more is asked for again: health changes in such a time. */
export async function isAskedAnew(
  tx: TeamPg,
  intake: IntakeRow | undefined,
  { clientId, zone, now }: Asking,
): Promise<boolean> {
  const today = localDateOf(now, zone);
  const last = await findLastBeforeBreak(tx, clientId, { today, away: AWAY_DAYS, within: ASKED_DAYS });
  if (last === null) return false;
  return !intake?.completedAt || localDateOf(intake.completedAt, zone) < addDays(last, AWAY_DAYS);
}

/** When what stands was sent; null: not yet, or before a break after which it is asked for again. */
export async function sentWhen(
  tx: TeamPg,
  intake: IntakeRow | undefined,
  asking: Asking,
): Promise<Date | null> {
  if (!intake?.completedAt || (await isAskedAnew(tx, intake, asking))) return null;
  return intake.completedAt;
}
