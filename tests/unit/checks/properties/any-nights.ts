import fc from 'fast-check';
import { EVERY_OTHER } from '#lib/checks/reasons.ts';
import type { ReasonChange, StoredReason } from '#lib/checks/types.ts';
import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { holdAfter, holdOf } from '#lib/usecases/hold-after-act.ts';
import { day } from '#tests/fixtures/history-builders.ts';
import { aFinding, afterNight } from '#tests/fixtures/reason-life.ts';

/** What reasons are about: one kind about two places, two that only their own rule closes, and good news. */
export type Cause = { kind: CheckKind; key: string };
export const CAUSES: readonly Cause[] = [
  { kind: 'pain-rising', key: 'elbow' },
  { kind: 'pain-rising', key: 'wrist' },
  { kind: 'stalled', key: 'pull' },
  { kind: 'pain-high', key: 'elbow' },
  { kind: 'danger-sign', key: 'swelling' },
  { kind: 'step-up-earned', key: 'pull' },
];
export const EARLY_NIGHTS = 3;

type Word = 'note' | 'watch' | 'act' | 'clear' | 'bound' | 'unsure' | 'unsaid';
type Said = { word: Word; value: number };
/** `covers`: how many days back the urgent rules speak for every place they do not name; null: they do not. */
type Night = { said: Said[]; acts: Act[]; covers: number | null };
type Act = { on: number; what: 'take' | 'until' | 'change' | 'done' | 'undo'; days: number };

function outcomeOf({ kind, key }: Cause, { word, value }: Said): Outcome[] {
  const subject = { key, label: key };
  if (word === 'unsaid') return [];
  if (word === 'unsure') return [{ status: 'not-enough-history', kind, subject, missing: '1 of 2' }];
  if (word === 'clear' || word === 'bound')
    return [{ status: 'clear', kind, subject, lowerBound: word === 'bound' }];
  return [aFinding(kind, word, { value, subject, evidence: { value, severity: value } })];
}

/** What an urgent rule says of every place it does not name. */
function everyOther(night: number, covers: number | null): Outcome[] {
  if (covers === null) return [];
  const subject = { key: EVERY_OTHER, label: '' };
  return URGENT_KINDS.map((kind) => ({ status: 'clear', kind, subject, coversFrom: day(night - covers) }));
}

const CALM = ['clear', 'clear', 'bound', 'unsure', 'unsaid'] as const;
const words = fc.constantFrom<Word>('note', 'watch', 'watch', 'watch', 'act', ...CALM);
const saidIn = (word: fc.Arbitrary<Word>) => fc.record({ word, value: fc.integer({ min: 1, max: 3 }) });
const act = fc.record({
  on: fc.nat(9),
  what: fc.constantFrom<Act['what']>('take', 'until', 'change', 'done', 'undo'),
  days: fc.integer({ min: 1, max: 9 }),
});
const nightOf = (said: fc.Arbitrary<Said>): fc.Arbitrary<Night> =>
  fc.record({
    said: fc.array(said, { minLength: CAUSES.length, maxLength: CAUSES.length }),
    acts: fc.array(act, { maxLength: 2 }),
    covers: fc.option(fc.nat(40)),
  });
/** As many calm nights as others: weeks in which nothing is said do come. */
const night = fc.oneof(nightOf(saidIn(words)), nightOf(saidIn(fc.constantFrom<Word>(...CALM))));
const MOST_NIGHTS = 40;

const STATES = ['open', 'aside', 'with-client', 'closed'] as const;

/** What is on the client page only is, to the machine, open. */
function withHold(reason: StoredReason, { state, ...hold }: ReturnType<typeof holdOf>): StoredReason {
  return { ...reason, ...hold, state: STATES.find((each) => each === state) ?? 'open' };
}

/** What a coach does to one of the open reasons on the morning after a night; undo puts back what the last act changed. */
function acted(
  stored: StoredReason[],
  { on, what, days }: Act,
  night: number,
  undo: StoredReason[],
): StoredReason[] {
  const live = stored.filter((reason) => reason.state === 'open');
  const reason = live[on % Math.max(1, live.length)];
  if (what === 'undo') {
    const before = undo.pop();
    return before
      ? stored.map((each) => (each.id === before.id ? withHold(each, holdFor(before)) : each))
      : stored;
  }
  if (!reason) return stored;
  undo.push(reason);
  const until = addDays(day(night + 1), days);
  const hold =
    what === 'take'
      ? { act: what, until }
      : what === 'done'
        ? { act: what, at: `${day(night + 1)}T08:00:00.000Z` }
        : { act: 'put-aside' as const, until: what === 'until' ? until : null };
  return stored.map((each) =>
    each.id === reason.id ? withHold(each, holdAfter(holdFor(each), hold)) : each,
  );
}

/** Nothing here is folded as known: the checks know nothing of it. */
function holdFor(reason: StoredReason) {
  return holdOf({ ...reason, knownOn: null, knownWords: null });
}

export type Step = {
  before: StoredReason[];
  after: StoredReason[];
  outcomes: Outcome[];
  changes: ReasonChange[];
  night: number;
};

/** Lives through all nights and mornings; `look` sees every night. */
function live(nights: Night[], look: (step: Step) => void): void {
  let stored: StoredReason[] = [];
  nights.forEach(({ said: each, acts, covers }, night) => {
    const named = CAUSES.flatMap((cause, at) => outcomeOf(cause, each[at] ?? { word: 'unsaid', value: 1 }));
    const outcomes = [...named, ...everyOther(night, covers)];
    const before = stored;
    const now = afterNight(stored, outcomes, night, night < EARLY_NIGHTS);
    stored = now.stored;
    look({ before, after: stored, outcomes, changes: now.changes, night });
    // Undo lasts for the morning; a night in between ends it.
    const undo: StoredReason[] = [];
    for (const one of acts) stored = acted(stored, one, night, undo);
  });
}

/** A thousand lives, most of them of a dozen nights; of at least so many where dates and weeks are to run out. */
export function always(look: (step: Step) => void, nightsAtLeast = 1): void {
  const nights = fc.array(night, { minLength: nightsAtLeast, maxLength: MOST_NIGHTS });
  fc.assert(
    fc.property(nights, (each) => live(each, look)),
    { numRuns: 1_000, seed: 20_261_125 },
  );
}
