import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';

/** A row can be folded as known when it stands the same for the third morning (own choice). */
const MORNINGS_BEFORE_KNOWN = 3;

/**
 * The reasons that a row shows and that acts are about. Good news never hides bad: while a danger sign or pain of 6 or
 * more is not closed, no step up is proposed or counted. `unclosed`: those that are put aside or with the client too.
 */
export function ofRow<Reason extends { kind: CheckKind }>(
  open: readonly Reason[],
  unclosed: readonly Reason[] = open,
): Reason[] {
  const urgent = unclosed.some((reason) => URGENT_KINDS.includes(reason.kind));
  return open.filter((reason) => !urgent || reason.kind !== 'step-up-earned');
}

/**
 * True when nothing on the row is newer than two days and nothing is a danger sign or pain of 6 or more.
 * `raisedOn` and `today`: dates of the coach. False without reasons.
 */
export function mayBeKnown(
  reasons: readonly { kind: CheckKind; raisedOn: string }[],
  today: string,
): boolean {
  return (
    reasons.length > 0 &&
    reasons.every(
      ({ kind, raisedOn }) =>
        !URGENT_KINDS.includes(kind) && daysBetween(raisedOn, today) + 1 >= MORNINGS_BEFORE_KNOWN,
    )
  );
}
