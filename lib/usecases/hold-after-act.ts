import type { ActReason, ReasonHold } from '#lib/db/acts.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';

/** Days until a step taken for this kind of reason is looked at first. */
const FIRST_LOOK: Partial<Record<CheckKind, number>> = {
  'danger-sign': 7,
  'pain-high': 7,
  'pain-rising': 7,
  'pain-lingering': 7,
  'pain-after-ground': 7,
  stalled: 28,
  slipping: 28,
  'too-little-time': 28,
  'side-gap': 42,
  'one-side-fault': 42,
  'question-waiting': 7,
  'plan-ending': 7,
};
const FIRST_LOOK_ELSE = 14;

/** When the step taken for a kind of reason is looked at again, as a local date. */
export function reviewDate(kind: CheckKind, today: string): string {
  return addDays(today, FIRST_LOOK[kind] ?? FIRST_LOOK_ELSE);
}

/** The client's reasons come back together, at the earliest of their dates. */
export function backFromClient(reasons: ActReason[], today: string): string {
  return reasons.map((reason) => reviewDate(reason.kind, today)).sort()[0] ?? addDays(today, FIRST_LOOK_ELSE);
}

export type Hold =
  | { act: 'take'; until: string }
  | { act: 'put-aside'; until: string | null }
  | { act: 'done'; at: string }
  | { act: 'known'; on: string; words: string }
  | { act: 'not-known' };

/** What a reason's row looks like after the act. Put aside without a date holds until it changes. */
export function holdAfter(before: ReasonHold, hold: Hold): ReasonHold {
  if (hold.act === 'take') return { ...before, state: 'with-client', withClientUntil: hold.until };
  if (hold.act === 'done') {
    // The night counts clear nights from here: closed by the coach, it stays closed while nothing is worse.
    return { ...before, state: 'closed', closedAt: hold.at, closedWhy: 'done by the coach', clearNights: 0 };
  }
  if (hold.act === 'known') return { ...before, knownOn: hold.on, knownWords: hold.words };
  if (hold.act === 'not-known') return { ...before, knownOn: null, knownWords: null };
  return { ...before, state: 'aside', asideUntil: hold.until, asideUntilWorse: hold.until === null };
}

/** Only the columns that an act may change. */
export function holdOf(reason: ReasonHold): ReasonHold {
  const { id, state, asideUntil, asideUntilWorse, withClientUntil, clearNights } = reason;
  const { closedAt, closedWhy, knownOn, knownWords } = reason;
  const until = { asideUntil, asideUntilWorse, withClientUntil };
  return { id, state, ...until, clearNights, closedAt, closedWhy, knownOn, knownWords };
}
