import { fingerprintOf } from '#lib/checks/fingerprint.ts';
import type { StoredReason } from '#lib/checks/types.ts';
import type { ReasonRow } from '#lib/db/reasons.ts';

/** A row in the form the alert machine reads. What is on the client page only is, to it, an open reason. */
export function toStoredReason(row: ReasonRow): StoredReason {
  return {
    id: row.id,
    kind: row.kind,
    subjectKey: row.subjectKey,
    level: row.level,
    points: row.points,
    tier: row.tier,
    state: row.state === 'client-page' ? 'open' : row.state,
    asideUntil: row.asideUntil,
    asideUntilWorse: row.asideUntilWorse,
    withClientUntil: row.withClientUntil,
    clearNights: row.clearNights,
    raisedAt: row.raisedAt,
    closedAt: row.closedAt,
    closedWhy: row.closedWhy,
    sentence: row.sentence,
    fingerprint: fingerprintOf(row),
  };
}
