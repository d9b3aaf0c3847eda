import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fingerprintOf } from '#lib/checks/fingerprint.ts';
import { advanceReasons, isWorse } from '#lib/checks/reasons.ts';
import type { StoredReason } from '#lib/checks/types.ts';
import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { holdAfter, holdOf } from '#lib/usecases/hold-after-act.ts';
import { day, evening } from '#tests/fixtures/history-builders.ts';
import { aFinding, afterNight } from '#tests/fixtures/reason-life.ts';

const KINDS = ['pain-rising', 'stalled', 'pain-high', 'step-up-earned'] as const;
const SUBJECT = { key: 'subject', label: 'subject' };

type Word = 'watch' | 'act' | 'clear' | 'bound' | 'unsure' | 'unsaid';
type Said = { word: Word; value: number };
type Night = { said: Said[]; acts: Act[] };
type Act = { on: number; what: 'take' | 'until' | 'change' | 'done' | 'undo'; days: number };

function outcomeOf(kind: CheckKind, { word, value }: Said): Outcome[] {
  if (word === 'unsaid') return [];
  if (word === 'unsure') return [{ status: 'not-enough-history', kind, subject: SUBJECT, missing: '1 of 2' }];
  if (word === 'clear' || word === 'bound')
    return [{ status: 'clear', kind, subject: SUBJECT, lowerBound: word === 'bound' }];
  return [aFinding(kind, word, { value, subject: SUBJECT })];
}

const words = fc.constantFrom<Word>(
  'watch',
  'watch',
  'watch',
  'act',
  'clear',
  'clear',
  'bound',
  'unsure',
  'unsaid',
);
const said = fc.record({ word: words, value: fc.integer({ min: 1, max: 3 }) });
const act = fc.record({
  on: fc.nat(9),
  what: fc.constantFrom<Act['what']>('take', 'until', 'change', 'done', 'undo'),
  days: fc.integer({ min: 1, max: 20 }),
});
const life = fc.array(
  fc.record({ said: fc.tuple(said, said, said, said), acts: fc.array(act, { maxLength: 2 }) }),
  { minLength: 1, maxLength: 40 },
);

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
      ? stored.map((each) => (each.id === before.id ? withHold(each, holdOf(before)) : each))
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
  return stored.map((each) => (each.id === reason.id ? withHold(each, holdAfter(holdOf(each), hold)) : each));
}

type Step = { before: StoredReason[]; after: StoredReason[]; outcomes: Outcome[]; night: number };

/** Lives through all nights and mornings; `look` sees every night. */
function live(nights: Night[], look: (step: Step) => void): void {
  let stored: StoredReason[] = [];
  nights.forEach(({ said: each, acts }, night) => {
    const outcomes = KINDS.flatMap((kind, at) => outcomeOf(kind, each[at] ?? { word: 'unsaid', value: 1 }));
    const before = stored;
    stored = afterNight(stored, outcomes, night).stored;
    look({ before, after: stored, outcomes, night });
    // Undo lasts for the morning; a night in between ends it.
    const undo: StoredReason[] = [];
    for (const one of acts) stored = acted(stored, one, night, undo);
  });
}

const always = (look: (step: Step) => void) =>
  fc.assert(
    fc.property(life, (nights) => live(nights, look)),
    { numRuns: 1000 },
  );
const flaggedIn = (outcomes: Outcome[]) =>
  outcomes.filter((each): each is Flagged => each.status === 'flagged');
const ofKind = (reasons: StoredReason[], kind: CheckKind) => reasons.filter((reason) => reason.kind === kind);
const openOf = (reasons: StoredReason[], kind: CheckKind) =>
  ofKind(reasons, kind).filter((each) => each.state !== 'closed');
const newestClosed = (reasons: StoredReason[], kind: CheckKind) =>
  ofKind(reasons, kind).sort((a, b) => ((a.closedAt ?? '') < (b.closedAt ?? '') ? 1 : -1))[0];

describe('the life of reasons, over random nights and acts', () => {
  it('never has two open for one cause', () => {
    always(({ after }) => {
      for (const kind of KINDS) expect(openOf(after, kind).length).toBeLessThanOrEqual(1);
    });
  });
  it('never loses one: what is flagged is open or held, or was done with and is no worse', () => {
    always(({ after, outcomes }) => {
      for (const finding of flaggedIn(outcomes)) {
        if (openOf(after, finding.kind).length === 1) continue;
        const closed = newestClosed(after, finding.kind);
        expect(closed?.closedWhy).toBe('done by the coach');
        expect(closed && isWorse(closed, finding)).toBe(false);
      }
    });
  });
  it('keeps what is open and flagged as tonight says it', () => {
    always(({ after, outcomes }) => {
      for (const finding of flaggedIn(outcomes)) {
        const [open] = openOf(after, finding.kind);
        if (open) expect([open.fingerprint, open.clearNights]).toEqual([fingerprintOf(finding), 0]);
      }
    });
  });
  it('never raises again what is open, done with or closed within 14 days, and changes nothing the second time', () => {
    always(({ before, after, outcomes, night }) => {
      for (const reason of after.filter((each) => !before.some((old) => old.id === each.id))) {
        expect(openOf(before, reason.kind)).toEqual([]);
        const closed = newestClosed(before, reason.kind);
        const days = closed?.closedAt ? daysBetween(closed.closedAt.slice(0, 10), day(night + 1)) : 99;
        expect(days).toBeGreaterThan(14);
      }
      const flagged = flaggedIn(outcomes);
      const again = advanceReasons(after, flagged, evening(night), { earlyNights: false }).filter(
        (change) =>
          change.change === 'raise' ||
          change.change === 'update' ||
          change.change === 'back' ||
          change.change === 'reopen',
      );
      expect(again).toEqual([]);
    });
  });
  it('holds what is put aside or with the client until its date or until worse', () => {
    always(({ before, after, outcomes, night }) => {
      for (const held of before.filter((each) => each.state === 'aside' || each.state === 'with-client')) {
        const finding = flaggedIn(outcomes).find((each) => each.kind === held.kind);
        const now = after.find((each) => each.id === held.id);
        const until = held.state === 'aside' ? held.asideUntil : held.withClientUntil;
        const over = until !== null && until <= day(night + 1);
        const free = finding !== undefined && (over || isWorse(held, finding));
        if (free) expect(now?.state).toBe('open');
        else expect([held.state, 'closed']).toContain(now?.state);
      }
    });
  });
  it('closes only after clear nights, and pain of 6 only when its rule says clear', () => {
    always(({ before, after, outcomes }) => {
      for (const reason of after.filter((each) => each.state === 'closed')) {
        if (before.find((old) => old.id === reason.id)?.state === 'closed') continue;
        const word = outcomes.find((each) => each.kind === reason.kind);
        if (reason.kind === 'pain-high') expect(word?.status).toBe('clear');
        if (reason.kind === 'step-up-earned' && !word) continue;
        expect(word === undefined || (word.status === 'clear' && word.lowerBound !== true)).toBe(true);
        if (reason.kind !== 'pain-high')
          expect(before.find((old) => old.id === reason.id)?.clearNights).toBe(1);
      }
    });
  });
  it('does not depend on the order of rows', () => {
    always(({ before, outcomes, night }) => {
      const forward = advanceReasons(before, outcomes, evening(night), { earlyNights: false });
      const backward = advanceReasons([...before].reverse(), [...outcomes].reverse(), evening(night), {
        earlyNights: false,
      });
      expect(backward).toEqual(forward);
    });
  });
});
