import type { AsOf, Flagged, Outcome } from '#lib/domain/finding.ts';
import type {
  ClientHistory,
  HistoryCheckIn,
  HistoryPlacement,
  HistoryPlan,
  HistoryRung,
} from '#lib/domain/history.ts';
import type { CheckKind, Level, Tier, Tissue } from '#lib/domain/vocabulary.ts';
import type { Limits } from './thresholds.ts';

/** `taken-as-rest`: between two check-ins of a client who logs regularly. `unknown` is never zero. */
export type DayState = 'trained' | 'rest' | 'taken-as-rest' | 'off' | 'unknown';

/** Load of one tissue on one side, in body-weight seconds. Key: `${tissue}:${'left'|'right'}`. */
export type TissueSide = `${Tissue}:${'left' | 'right'}`;

export type Day = {
  date: string;
  state: DayState;
  checkIns: HistoryCheckIn[];
  /** Effort x minutes, AU. 0 on rest; undefined when unknown. Off days: 0. */
  sessionLoad: number | undefined;
  /** Inside a planned easy or test week. */
  easy: boolean;
  /** Trained on soft ground. */
  soft: boolean;
};

/** One client seen from one evening: everything the rules share, computed once. Pure. */
export type ClientView = {
  history: ClientHistory;
  asOf: AsOf;
  /** The numbers by which its days are told. */
  limits: Limits;
  /** Oldest first, consecutive, the last one is `asOf.date`. Starts at the first check-in or join, or where the checks look back to. */
  days: Day[];
  /** The date of joining in the client's own zone; undefined when the client has not joined. */
  joinedOn: string | undefined;
  /** Index of a date in `days`, or -1. */
  indexOf: (date: string) => number;
  rungs: ReadonlyMap<string, HistoryRung>;
  /** The plan in force on a date. */
  planOn: (date: string) => HistoryPlan | undefined;
  /** What was worked out of this view so far, which never changes once built: see `oncePerView`. */
  memo: unknown[];
  /** The view of an evening before, when all of its days are the first days of this one: what was trained is known. */
  earlier?: ClientView | undefined;
  /** No check-in came since `earlier`: what was worked out of check-ins alone is as it was. */
  nothingNew: boolean;
  /** Current placements: the newest of each ladder and side not after `asOf.date`. */
  standing: HistoryPlacement[];
};

export type Check = {
  kind: CheckKind;
  title: string;
  /** One sentence a coach understands. */
  question: string;
  evaluate: (view: ClientView, limits: Limits) => Outcome[];
};

/** A reason as stored, in the form the alert machine reads. */
export type StoredReason = {
  id: string;
  kind: CheckKind;
  subjectKey: string;
  level: Level;
  points: number;
  tier: Tier | null;
  state: 'open' | 'aside' | 'with-client' | 'closed';
  asideUntil: string | null;
  asideUntilWorse: boolean;
  withClientUntil: string | null;
  clearNights: number;
  raisedAt: string;
  closedAt: string | null;
  closedWhy: string | null;
  sentence: string;
  /** Stable text of evidence, to see whether tonight changes anything. */
  fingerprint: string;
};

export type ReasonChange =
  | { change: 'raise'; outcome: Flagged; onClientPageOnly: boolean }
  | { change: 'reopen'; id: string; outcome: Flagged }
  | { change: 'update'; id: string; outcome: Flagged; worse: boolean }
  | { change: 'back'; id: string; outcome: Flagged; why: 'date' | 'worse' | 'changed' }
  | { change: 'count-clear'; id: string; clearNights: number }
  | { change: 'close'; id: string; why: string };
