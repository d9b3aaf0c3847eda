import { describe, expect, it } from 'vitest';
import { fingerprintOf } from '#lib/checks/fingerprint.ts';
import { advanceReasons, EVERY_OTHER, isWorse } from '#lib/checks/reasons.ts';
import type { StoredReason } from '#lib/checks/types.ts';
import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import type { Flagged, Outcome } from '#lib/domain/finding.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { day, evening } from '#tests/fixtures/history-builders.ts';
import { always, CAUSES, type Cause, EARLY_NIGHTS } from './properties/any-nights.ts';

/** Nights in which dates pass, and the two weeks in which a closed reason is reopened. */
const LONG = 16;

const flaggedIn = (outcomes: Outcome[]) =>
  outcomes.filter((each): each is Flagged => each.status === 'flagged');
const causeOf = ({ kind, subject }: Outcome): Cause => ({ kind, key: subject.key });
const isAbout = (reason: StoredReason, { kind, key }: Cause) =>
  reason.kind === kind && reason.subjectKey === key;
const causeOfReason = ({ kind, subjectKey }: StoredReason): Cause => ({ kind, key: subjectKey });
const saidOf = (outcomes: Outcome[], cause: Cause) =>
  outcomes.find((each) => each.kind === cause.kind && each.subject.key === cause.key);
const openOf = (reasons: StoredReason[], cause: Cause) =>
  reasons.filter((each) => isAbout(each, cause) && each.state !== 'closed');
const newestClosed = (reasons: StoredReason[], cause: Cause) =>
  reasons
    .filter((each) => isAbout(each, cause))
    .sort((a, b) => ((a.closedAt ?? '') < (b.closedAt ?? '') ? 1 : -1))[0];

/** Closed by clear nights while put aside or with the client, and the date of that is still to come. */
function isHeldOver(reason: StoredReason, night: number): boolean {
  if (URGENT_KINDS.includes(reason.kind) || reason.closedWhy?.startsWith('done')) return false;
  return [reason.asideUntil, reason.withClientUntil].some(
    (until) => until !== null && until > day(night + 1),
  );
}

describe('the life of reasons, over random nights and acts', () => {
  it('never has two open for one cause', () => {
    always(({ after }) => {
      for (const cause of CAUSES) expect(openOf(after, cause).length).toBeLessThanOrEqual(1);
    });
  });
  it('never loses one: what is flagged is open or held, or was done with or held when closed, and no worse', () => {
    always(({ after, outcomes, night }) => {
      for (const finding of flaggedIn(outcomes)) {
        if (openOf(after, causeOf(finding)).length === 1) continue;
        const closed = newestClosed(after, causeOf(finding));
        if (!closed || !isHeldOver(closed, night)) expect(closed?.closedWhy).toBe('done by the coach');
        expect(closed && isWorse(closed, finding)).toBe(false);
      }
    });
  });
  it('keeps what is open and flagged as tonight says it', () => {
    always(({ after, outcomes }) => {
      for (const finding of flaggedIn(outcomes)) {
        const [open] = openOf(after, causeOf(finding));
        if (open) expect([open.fingerprint, open.clearNights]).toEqual([fingerprintOf(finding), 0]);
      }
    });
  });
  it('never raises again what is open, done with or closed within 14 days, and changes nothing the second time', () => {
    always(({ before, after, outcomes, night }) => {
      for (const reason of after.filter((each) => !before.some((old) => old.id === each.id))) {
        expect(openOf(before, causeOfReason(reason))).toEqual([]);
        const closed = newestClosed(before, causeOfReason(reason));
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
        const finding = flaggedIn(outcomes).find((each) => isAbout(held, causeOf(each)));
        const now = after.find((each) => each.id === held.id);
        const until = held.state === 'aside' ? held.asideUntil : held.withClientUntil;
        const over = until !== null && until <= day(night + 1);
        const free = finding !== undefined && (over || isWorse(held, finding));
        if (free) expect(now?.state).toBe('open');
        else expect([held.state, 'closed']).toContain(now?.state);
      }
    }, 6);
  });
  it('closes only after clear nights; danger and pain of 6 only by what their own rule says', () => {
    always(({ before, after, outcomes }) => {
      for (const reason of after.filter((each) => each.state === 'closed')) {
        const old = before.find((each) => each.id === reason.id);
        if (old?.state === 'closed') continue;
        const word = saidOf(outcomes, causeOfReason(reason));
        if (word) expect(word.status === 'clear' && word.lowerBound !== true).toBe(true);
        if (URGENT_KINDS.includes(reason.kind)) {
          const rest = saidOf(outcomes, { kind: reason.kind, key: EVERY_OTHER });
          const from = rest?.status === 'clear' ? rest.coversFrom : undefined;
          if (!word) expect(from !== undefined && from <= reason.raisedAt.slice(0, 10)).toBe(true);
        } else if (reason.kind !== 'step-up-earned' || word) expect(old?.clearNights).toBe(1);
      }
    });
  });
  it('closes danger and pain of 6 as soon as their own rule says clear', () => {
    always(({ before, after, outcomes }) => {
      for (const reason of before.filter((each) => URGENT_KINDS.includes(each.kind))) {
        const word = saidOf(outcomes, causeOfReason(reason));
        if (word?.status !== 'clear' || word.lowerBound) continue;
        expect(after.find((each) => each.id === reason.id)?.state).toBe('closed');
      }
    });
  });
  it('closes good news as soon as its rung is not named any more', () => {
    always(({ before, after, outcomes }) => {
      for (const reason of before.filter((each) => each.kind === 'step-up-earned')) {
        if (saidOf(outcomes, causeOfReason(reason)) !== undefined) continue;
        expect(after.find((each) => each.id === reason.id)?.state).toBe('closed');
      }
    });
  });
  it('leaves closed what the coach has done with, until it is worse or has been clear for two nights', () => {
    always(({ before, after, outcomes }) => {
      for (const finding of flaggedIn(outcomes)) {
        const closed = newestClosed(before, causeOf(finding));
        const done = closed?.closedWhy?.startsWith('done') && openOf(before, causeOf(finding)).length === 0;
        if (!closed || !done) continue;
        const stays = closed.clearNights < 2 && !isWorse(closed, finding);
        expect(openOf(after, causeOf(finding))).toHaveLength(stays ? 0 : 1);
      }
    });
  });
  it('reopens the same reason within 14 days of two clear nights, with no new one', () => {
    always(({ before, after, outcomes, night }) => {
      for (const finding of flaggedIn(outcomes)) {
        const closed = newestClosed(before, causeOf(finding));
        if (!closed?.closedAt || openOf(before, causeOf(finding)).length > 0) continue;
        const days = daysBetween(closed.closedAt.slice(0, 10), day(night + 1));
        const done = closed.closedWhy?.startsWith('done') ?? false;
        const [open] = openOf(after, causeOf(finding));
        if (isHeldOver(closed, night) && !isWorse(closed, finding)) {
          expect(open).toBeUndefined();
          continue;
        }
        if (days <= 14 && !done) expect([open?.id, open?.raisedAt]).toEqual([closed.id, closed.raisedAt]);
        if (days > 14 && !done) expect(open?.id).not.toBe(closed.id);
      }
    }, LONG);
  });
  it('keeps a new one off the board for its first nights and while it is a note, but never an urgent one', () => {
    always(({ changes, night }) => {
      for (const change of changes) {
        if (change.change !== 'raise') continue;
        const { kind, tier } = change.outcome;
        const waits = tier === null || (night < EARLY_NIGHTS && !URGENT_KINDS.includes(kind));
        expect(change.onClientPageOnly).toBe(waits);
      }
    });
  });
  it('goes on checking what is put aside or with the client: two clear nights close it there too', () => {
    always(({ before, after, outcomes }) => {
      for (const held of before.filter((each) => each.state === 'aside' || each.state === 'with-client')) {
        const word = saidOf(outcomes, causeOfReason(held));
        const counts = word?.status === 'clear' && !word.lowerBound && held.clearNights === 1;
        if (counts) expect(after.find((each) => each.id === held.id)?.state).toBe('closed');
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
  it('goes through every change often enough to prove all this', () => {
    const times = new Map<string, number>();
    always(({ changes }) => {
      for (const each of changes) {
        const name = each.change === 'back' ? `back: ${each.why}` : each.change;
        times.set(name, (times.get(name) ?? 0) + 1);
      }
    }, LONG);
    const all = ['raise', 'reopen', 'update', 'back: date', 'back: worse', 'count-clear', 'close'];
    expect(all.filter((name) => (times.get(name) ?? 0) < 200)).toEqual([]);
  });
});
