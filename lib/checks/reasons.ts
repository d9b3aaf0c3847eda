import type { AsOf, Clear, Flagged, Outcome } from '#lib/domain/finding.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { fingerprintOf, severityOf } from './fingerprint.ts';
import { DEFAULT_LIMITS, type Limits } from './thresholds.ts';
import type { ReasonChange, StoredReason } from './types.ts';
import { compareLevels, compareTiers, URGENT_KINDS } from './urgency.ts';

type Options = { earlyNights: boolean; limits?: Limits };
type Night = { night: AsOf; options: Options; limits: Limits };

/** The subject of a `clear` that speaks for every subject its kind does not name. */
export const EVERY_OTHER = '*';

/**
 * What one night changes about a client's reasons. Pure and independent of the order of both lists. One open reason
 * for each kind and subject; two clear nights close it; not-enough-history and a lower bound leave it alone; closed by
 * two clear nights it reopens within 14 days; closed by the coach it stays closed while nothing is worse. What is put
 * aside or with the client comes back on the morning of its date or when it is worse, also when clear nights closed it
 * in between, and never stops being checked.
 */
export function advanceReasons(
  stored: readonly StoredReason[],
  outcomes: readonly Outcome[],
  night: AsOf,
  options: Options,
): ReasonChange[] {
  const context = { night, options, limits: options.limits ?? DEFAULT_LIMITS };
  const byKey = new Map<string, StoredReason>();
  for (const reason of stored) {
    const key = keyOf(reason.kind, reason.subjectKey);
    const other = byKey.get(key);
    if (!other || isNewer(reason, other)) byKey.set(key, reason);
  }
  const said = new Map(outcomes.map((outcome) => [keyOf(outcome.kind, outcome.subject.key), outcome]));
  const keys = [...new Set([...byKey.keys(), ...said.keys()])].sort();
  return keys.flatMap((key) => changeOf(byKey.get(key), said.get(key), said, context));
}

function changeOf(
  reason: StoredReason | undefined,
  outcome: Outcome | undefined,
  said: ReadonlyMap<string, Outcome>,
  context: Night,
): ReasonChange[] {
  if (outcome?.status === 'flagged') {
    if (!reason) return [raise(outcome, context)];
    return reason.state === 'closed' ? again(reason, outcome, context) : update(reason, outcome, context);
  }
  if (!reason || outcome?.status === 'not-enough-history') return [];
  if (outcome?.status === 'clear') return outcome.lowerBound ? [] : clear(reason, outcome, context);
  return unsaid(reason, said, context);
}

function raise(outcome: Flagged, { options }: Night): ReasonChange {
  const waits = options.earlyNights && !URGENT_KINDS.includes(outcome.kind);
  return { change: 'raise', outcome, onClientPageOnly: waits || outcome.tier === null };
}

/** Tonight flags a reason that is open, put aside or with the client. */
function update(reason: StoredReason, outcome: Flagged, { night }: Night): ReasonChange[] {
  const worse = isWorse(reason, outcome);
  if (reason.state !== 'open' && worse) return [{ change: 'back', id: reason.id, outcome, why: 'worse' }];
  if (isOver(reason, night)) return [{ change: 'back', id: reason.id, outcome, why: 'date' }];
  if (reason.fingerprint !== fingerprintOf(outcome))
    return [{ change: 'update', id: reason.id, outcome, worse }];
  return reason.clearNights > 0 ? [{ change: 'count-clear', id: reason.id, clearNights: 0 }] : [];
}

/** Tonight flags a reason that is closed. */
function again(reason: StoredReason, outcome: Flagged, { night, options, limits }: Night): ReasonChange[] {
  const settled = isDone(reason) && reason.clearNights < limits['reason.clearNights'];
  if ((settled || isHeld(reason, night)) && !isWorse(reason, outcome)) return [];
  const days =
    reason.closedAt === null ? 0 : daysBetween(reason.closedAt.slice(0, 10), night.instant.slice(0, 10));
  if (days > limits['reason.reopenDays']) return [raise(outcome, { night, options, limits })];
  return [{ change: 'reopen', id: reason.id, outcome }];
}

/** Tonight says clear. Urgent kinds say so only when what closes them has happened. */
function clear(reason: StoredReason, outcome: Clear, { limits }: Night): ReasonChange[] {
  const clearNights = reason.clearNights + 1;
  if (reason.state === 'closed') {
    const counts = isDone(reason) && clearNights <= limits['reason.clearNights'];
    return counts ? [{ change: 'count-clear', id: reason.id, clearNights }] : [];
  }
  if (outcome.why !== undefined) return [{ change: 'close', id: reason.id, why: outcome.why }];
  if (URGENT_KINDS.includes(reason.kind)) return [{ change: 'close', id: reason.id, why: 'cleared' }];
  if (clearNights < limits['reason.clearNights'])
    return [{ change: 'count-clear', id: reason.id, clearNights }];
  return [{ change: 'close', id: reason.id, why: `${clearNights} clear nights` }];
}

/** Tonight's rule does not name the subject any more. */
function unsaid(reason: StoredReason, said: ReadonlyMap<string, Outcome>, context: Night): ReasonChange[] {
  if (reason.kind === 'step-up-earned' && reason.state !== 'closed') {
    return [{ change: 'close', id: reason.id, why: 'the rung changed' }];
  }
  const subject = { key: reason.subjectKey, label: '' };
  if (!URGENT_KINDS.includes(reason.kind))
    return clear(reason, { status: 'clear', kind: reason.kind, subject }, context);
  const rest = said.get(keyOf(reason.kind, EVERY_OTHER));
  const covered =
    rest?.status === 'clear' &&
    rest.coversFrom !== undefined &&
    rest.coversFrom <= reason.raisedAt.slice(0, 10);
  return covered && reason.state !== 'closed'
    ? [{ change: 'close', id: reason.id, why: 'entry corrected' }]
    : [];
}

/** The date it was put aside or left with the client until is the morning after this night, or past. */
function isOver(reason: StoredReason, night: AsOf): boolean {
  const until =
    reason.state === 'aside'
      ? reason.asideUntil
      : reason.state === 'with-client'
        ? reason.withClientUntil
        : null;
  return until !== null && until <= addDays(night.date, 1);
}

/** A higher level, an earlier tier, or a higher severity where the rule states one. */
export function isWorse(
  reason: Pick<StoredReason, 'level' | 'tier' | 'fingerprint'>,
  outcome: Flagged,
): boolean {
  if (compareLevels(outcome.level, reason.level) > 0 || compareTiers(outcome.tier, reason.tier) < 0)
    return true;
  const before = severityOf(reason.fingerprint);
  const now = severityOf(fingerprintOf(outcome));
  return before !== undefined && now !== undefined && now > before;
}

/** Closed by clear nights while it was put aside or with the client, and that date is still to come. */
function isHeld(reason: StoredReason, night: AsOf): boolean {
  if (isDone(reason) || URGENT_KINDS.includes(reason.kind)) return false;
  const morning = addDays(night.date, 1);
  return [reason.asideUntil, reason.withClientUntil].some((until) => until !== null && until > morning);
}

/** Closed by the coach, not by clear nights. */
function isDone(reason: StoredReason): boolean {
  return reason.closedWhy?.startsWith('done') ?? false;
}

/** An open one before a closed one; of two closed ones the one closed last. */
function isNewer(a: StoredReason, b: StoredReason): boolean {
  if ((a.closedAt === null) !== (b.closedAt === null)) return a.closedAt === null;
  const [left, right] = [a.closedAt ?? a.raisedAt, b.closedAt ?? b.raisedAt];
  return left === right ? a.id > b.id : left > right;
}

function keyOf(kind: string, subject: string): string {
  return `${kind} ${subject}`;
}
