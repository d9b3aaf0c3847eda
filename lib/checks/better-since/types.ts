import type { Flagged, Subject } from '#lib/domain/finding.ts';
import type { CheckKind, Side } from '#lib/domain/vocabulary.ts';
import type { Limits } from '../thresholds.ts';
import type { ClientView } from '../types.ts';

/** A reason that is followed from a day on: since a step was taken for it, or since it was raised and left alone. */
export type Followed = {
  kind: CheckKind;
  subject: Pick<Subject, 'key' | 'ladderId' | 'rungId' | 'side' | 'region'>;
  /** Of the reason, as it was raised: which tissue, which fault. */
  evidence: Flagged['evidence'];
  /** The last day of before: the day of the step, or the evening from which the reason was known. */
  from: string;
  /** What was done; undefined: nothing was. */
  step?: StepDone | undefined;
};

/** The step itself, so that what it changed is not counted as another change. */
export type StepDone = {
  kind: string;
  ladderId: string | null;
  side: Side | null;
  /** Versions of the plan that it wrote. */
  planVersions: readonly number[];
  setLimit: boolean;
};

/** One number before and after. `atLeast`: unknown days could make it larger. */
export type Amount = { value: number; said: string; atLeast?: boolean } | { missing: string };

export type Measured = {
  /** In words, with the days it reads. */
  what: string;
  unit: string;
  lowerIsBetter: boolean;
  /** A smaller difference is the same. */
  tolerance: number;
  before: Amount;
  after: Amount;
  /** Better whatever the numbers say, in words: the rung was passed. */
  passed?: string | undefined;
};

/** What a measure reads: the client on the evening of `from`, and on the last evening of the window. */
export type Compared = {
  before: ClientView;
  after: ClientView;
  followed: Followed;
  windowDays: number;
  limits: Limits;
};

export type Measure = (compared: Compared) => Measured;

export const SINCE_OUTCOMES = ['better', 'same', 'worse', 'not-known', 'not-yet'] as const;
export type SinceOutcome = (typeof SINCE_OUTCOMES)[number];

export type Since = {
  outcome: SinceOutcome;
  windowDays: number;
  /** Last day of the window. */
  until: string;
  /** What was compared, in words. Empty while the window is not over. */
  what: string;
  unit: string;
  before: number | null;
  after: number | null;
  /** The numbers in one sentence; or what is missing, with the count. */
  said: string;
  /** What else changed in these weeks, in words. */
  changes: string[];
};
