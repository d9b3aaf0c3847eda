import type { TeamPg } from '#lib/db/client.ts';
import { findLastBeforeBreak, type IntakeRow } from '#lib/db/intakes.ts';
import { listSettings } from '#lib/db/settings.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';

/** For so long after the return the questions are asked. Own choice: the first weeks, twice. */
const ASKED_DAYS = 56;
/** Days for which the phone greets who starts as new, from the first check-in on. Own choice. */
const GREETED_DAYS = 7;

export type Asking = { clientId: string; zone: string; now: Date };

/** Whether what was sent before a break after which somebody starts as new is asked for again: health changes in it. */
export async function isAskedAnew(
  tx: TeamPg,
  intake: IntakeRow | undefined,
  asking: Asking,
): Promise<boolean> {
  const newStart = await findNewStart(tx, asking, ASKED_DAYS);
  if (!newStart) return false;
  return !intake?.completedAt || localDateOf(intake.completedAt, asking.zone) < newStart.from;
}

/** Whether the phone greets a client as one who starts as new: away that long up to now, or until this week. */
export async function isBackAsNew(tx: TeamPg, asking: Asking): Promise<boolean> {
  return (await findNewStart(tx, asking, GREETED_DAYS)) !== undefined;
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

/**
 * The newest break of so many days without a check-in, by the client's own numbers, that ended in the `within` days up
 * to today or has not ended: `from` is the day from which a return is a new start.
 */
async function findNewStart(
  tx: TeamPg,
  { clientId, zone, now }: Asking,
  within: number,
): Promise<{ from: string } | undefined> {
  const { limits } = (await listSettings(tx, [clientId])).of(clientId);
  const away = limits['day.newStartDays'];
  const last = await findLastBeforeBreak(tx, clientId, { today: localDateOf(now, zone), away, within });
  return last === null ? undefined : { from: addDays(last, away + 1) };
}
