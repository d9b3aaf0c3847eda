import type { AsOf, Flagged, Outcome } from '#lib/domain/finding.ts';
import type { CheckKind, Level, Tier } from '#lib/domain/vocabulary.ts';
import { fingerprintOf } from '../fingerprint.ts';
import { advanceReasons } from '../reasons.ts';
import { countedBy, type ReasonState, stateAfter } from '../state-after.ts';
import type { Limits } from '../thresholds.ts';
import type { ReasonChange, StoredReason } from '../types.ts';
import { compareLevels, compareTiers } from '../urgency.ts';

/** One stay of a reason: from the night that raised it to the night that closed it. Dates are local. */
export type Stay = {
  kind: CheckKind;
  key: string;
  label: string;
  short: string;
  from: string;
  /** null: open after the last night. */
  until: string | null;
  /** The first night it stood on the board; null: on the client page only. */
  onBoard: string | null;
  /** The most urgent it came to be. */
  tier: Tier | null;
  level: Level;
};

/** What a coach did with a reason, as it left it: put aside, with the client, done, back again. */
export type ReplayAct = {
  kind: CheckKind;
  key: string;
  at: string;
  state: StoredReason['state'];
  asideUntil: string | null;
  asideUntilWorse: boolean;
  withClientUntil: string | null;
  closedWhy: string | null;
};

type Kept = StoredReason & { onPage: boolean; stay: Stay };

/** A client's reasons while nights are run again: what is stored, the stays so far, the acts still to come. */
export type Replay = {
  kept: Kept[];
  stays: Stay[];
  acts: ReplayAct[];
  /** Nights with a reason on the board. */
  nightsOnBoard: string[];
};

export function newReplay(acts: readonly ReplayAct[]): Replay {
  return {
    kept: [],
    stays: [],
    acts: [...acts].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0)),
    nightsOnBoard: [],
  };
}

/** One night more: what the coach did since the last one, then what tonight's outcomes change. Changes `replay`. */
export function replayNight(
  replay: Replay,
  outcomes: readonly Outcome[],
  night: AsOf,
  { limits, nightsDone }: { limits: Limits; nightsDone: number },
): void {
  while ((replay.acts[0]?.at ?? '9') <= night.instant) {
    const act = replay.acts.shift();
    if (act) doAct(replay, act);
  }
  const early = nightsDone < limits['reason.earlyNights'];
  const before = replay.kept.map((reason) => ({ reason, state: stateOf(reason) }));
  const changes = advanceReasons(replay.kept, outcomes, night, { earlyNights: early, limits });
  const counted = early
    ? []
    : before.flatMap(({ reason, state }) => {
        const outcome = countedBy({ ...reason, state }, outcomes);
        return outcome ? [{ reason, outcome }] : [];
      });
  for (const change of changes) {
    apply(replay, change, night, { early, counts: (id) => counted.some(({ reason }) => reason.id === id) });
  }
  for (const { reason, outcome } of counted) {
    if (reason.state === 'open' && outcome.tier !== null) reason.onPage = false;
  }
  let onBoard = false;
  for (const reason of replay.kept) {
    if (stateOf(reason) !== 'open' || reason.tier === null) continue;
    reason.stay.onBoard ??= night.date;
    onBoard = true;
  }
  if (onBoard) replay.nightsOnBoard.push(night.date);
}

function stateOf(reason: Kept): ReasonState {
  return reason.onPage && reason.state === 'open' ? 'client-page' : reason.state;
}

function doAct(replay: Replay, { kind, key, at, ...hold }: ReplayAct): void {
  const reason = replay.kept.findLast((one) => one.kind === kind && one.subjectKey === key);
  if (!reason || (reason.state === 'closed' && hold.state === 'closed')) return;
  Object.assign(reason, hold, { closedAt: hold.state === 'closed' ? at : null });
  reason.stay.until = hold.state === 'closed' ? at.slice(0, 10) : null;
}

type Context = { early: boolean; counts: (id: string) => boolean };

function apply(replay: Replay, change: ReasonChange, night: AsOf, context: Context): void {
  if (change.change === 'raise') {
    replay.kept.push(raised(replay, change.outcome, night, change.onClientPageOnly));
    return;
  }
  const reason = replay.kept.find(({ id }) => id === change.id);
  if (!reason) return;
  if (change.change === 'count-clear') {
    reason.clearNights = change.clearNights;
  } else if (change.change === 'close') {
    Object.assign(reason, {
      state: 'closed',
      clearNights: 0,
      closedAt: night.instant,
      closedWhy: change.why,
    });
    reason.stay.until = night.date;
  } else {
    update(replay, reason, change.outcome, { ...context, back: change.change !== 'update', night });
  }
}

function raised(replay: Replay, outcome: Flagged, night: AsOf, onPage: boolean): Kept {
  return {
    id: String(replay.kept.length),
    kind: outcome.kind,
    subjectKey: outcome.subject.key,
    state: 'open',
    asideUntil: null,
    asideUntilWorse: false,
    withClientUntil: null,
    clearNights: 0,
    raisedAt: night.instant,
    closedAt: null,
    closedWhy: null,
    ...said(outcome),
    onPage,
    stay: newStay(replay, outcome, night),
  };
}

function newStay(replay: Replay, outcome: Flagged, night: AsOf): Stay {
  const { kind, subject, short, tier, level } = outcome;
  const { key, label } = subject;
  const stay = { kind, key, label, short, from: night.date, until: null, onBoard: null, tier, level };
  replay.stays.push(stay);
  return stay;
}

function update(
  replay: Replay,
  reason: Kept,
  outcome: Flagged,
  { early, counts, back, night }: Context & { back: boolean; night: AsOf },
): void {
  const before = stateOf(reason);
  const state = stateAfter({ before, outcome, back, counted: counts(reason.id), early });
  if (before === 'closed') reason.stay = newStay(replay, outcome, night);
  Object.assign(reason, said(outcome), {
    state: state === 'client-page' ? 'open' : state,
    onPage: state === 'client-page',
    clearNights: 0,
    ...(back && {
      asideUntil: null,
      asideUntilWorse: false,
      withClientUntil: null,
      closedAt: null,
      closedWhy: null,
    }),
  });
  const { stay } = reason;
  if (compareTiers(outcome.tier, stay.tier) < 0) stay.tier = outcome.tier;
  if (compareLevels(outcome.level, stay.level) > 0) stay.level = outcome.level;
}

function said(outcome: Flagged) {
  const { level, points, tier, sentence } = outcome;
  return { level, points, tier, sentence, fingerprint: fingerprintOf(outcome) };
}
