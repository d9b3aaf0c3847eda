import { advanceReasons } from '#lib/checks/reasons.ts';
import { runChecks } from '#lib/checks/run.ts';
import { countedBy } from '#lib/checks/state-after.ts';
import type { ReasonChange, StoredReason } from '#lib/checks/types.ts';
import type { ReasonRow } from '#lib/db/reasons.ts';
import type { SettingsInForce } from '#lib/db/settings.ts';
import type { AsOf, Flagged, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { toStoredReason } from './stored-reason.ts';

export type Judgement = {
  clientId: string;
  outcomes: Outcome[];
  changes: ReasonChange[];
  /** Reasons that were on the client page only and count from now on. */
  counted: { id: string; outcome: Flagged }[];
  /** One of the client's first three nights. */
  early: boolean;
  /** The settings it was judged by. */
  settingsVersion: number;
};

/** Everything one night (or one check-in) says about one client. Pure: throws only when the checks do. */
export function judgeClient(
  history: ClientHistory,
  stored: ReasonRow[],
  asOf: AsOf,
  { limits, version, nightsDone }: Pick<SettingsInForce, 'limits' | 'version'> & { nightsDone: number },
): Judgement {
  // Whoever left between the queue and the night: nothing comes up about them any more.
  const outcomes = history.client.standing === 'left' ? [] : runChecks(history, asOf, limits);
  const early = nightsDone < limits['reason.earlyNights'];
  const reasons: StoredReason[] = stored.map(toStoredReason);
  // A night that is run late must not touch what was raised or done by a person after it was due.
  const later = stored.filter((reason) => reason.touchedAt > asOf.instant);
  const changes = advanceReasons(reasons, outcomes, asOf, { earlyNights: early, limits }).filter(
    (change) => !later.some((reason) => isAbout(change, reason)),
  );
  return {
    clientId: history.client.id,
    outcomes,
    changes,
    counted: early ? [] : countedNow(stored, outcomes, later),
    early,
    settingsVersion: version,
  };
}

function isAbout(change: ReasonChange, reason: ReasonRow): boolean {
  if (change.change !== 'raise') return change.id === reason.id;
  return change.outcome.kind === reason.kind && change.outcome.subject.key === reason.subjectKey;
}

function countedNow(stored: ReasonRow[], outcomes: Outcome[], later: ReasonRow[]): Judgement['counted'] {
  return stored
    .filter((reason) => !later.includes(reason))
    .flatMap((reason) => {
      const outcome = countedBy(reason, outcomes);
      return outcome ? [{ id: reason.id, outcome }] : [];
    });
}
