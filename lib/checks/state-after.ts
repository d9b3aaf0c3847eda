import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import type { StoredReason } from './types.ts';
import { URGENT_KINDS } from './urgency.ts';

/** Where a reason stands. `client-page`: not yet counted, never on the board. */
export type ReasonState = StoredReason['state'] | 'client-page';

/** Held reasons stay held; notes, and all but urgent kinds in the first nights, stand on the client page only. */
export function stateAfter(about: {
  before: ReasonState;
  outcome: Flagged;
  /** It comes back: from its date, or worse, or closed. */
  back: boolean;
  /** It was on the client page only and counts from now on. */
  counted: boolean;
  /** One of the client's first nights. */
  early: boolean;
}): ReasonState {
  const { before, outcome, back, counted, early } = about;
  if (!back && (before === 'aside' || before === 'with-client')) return before;
  if (outcome.tier === null) return 'client-page';
  if (URGENT_KINDS.includes(outcome.kind)) return 'open';
  if (before === 'closed') return early ? 'client-page' : 'open';
  if (before === 'client-page') return counted ? 'open' : 'client-page';
  return 'open';
}

/** What tonight says of a reason that stood on the client page only and counts from now on; undefined: it does not. */
export function countedBy(
  reason: { kind: string; subjectKey: string; state: ReasonState },
  outcomes: readonly Outcome[],
): Flagged | undefined {
  if (reason.state !== 'client-page') return undefined;
  return outcomes.find(
    (each): each is Flagged =>
      each.status === 'flagged' &&
      each.tier !== null &&
      each.kind === reason.kind &&
      each.subject.key === reason.subjectKey,
  );
}
