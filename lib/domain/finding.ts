import type { CheckKind, Level, PainRegion, PainSide, Side, Tier, Tissue } from './vocabulary.ts';

/** What a reason is about. `key` is stable over nights: one open reason per client, kind and key. */
export type Subject = {
  key: string;
  /** In words, e.g. "right elbow, inner" or "Toe pull, left". Empty for the whole client. */
  label: string;
  ladderId?: string;
  rungId?: string;
  side?: Side | PainSide;
  tissue?: Tissue;
  region?: PainRegion;
};

/** One number the screen can show: name, value, unit. */
export type Fact = { name: string; value: number | string; unit: string };

/** The working of a finding: enough to compute it again by hand. */
export type Working = {
  inputs: Fact[];
  /** Formula in words. */
  formula: string;
  thresholds: { id: string; value: number; unit: string; meaning: string; source: string }[];
  daysKnown: { known: number; of: number } | null;
  /** What the number does not say; published doubt. */
  doubt: string;
};

export type ProposedStep = {
  kind:
    | 'step-up'
    | 'one-rung-back'
    | 'hold'
    | 'cut-volume'
    | 'drop-a-goal'
    | 'ask-film'
    | 'send-to-clinician'
    | 'more-time'
    | 'write-first'
    | 'answer'
    | 'new-plan'
    | 'look'
    | 'one-side-back';
  /** One plain line for the coach: "Step up to 30 s, with 20 s beside it". */
  text: string;
};

export type Flagged = {
  status: 'flagged';
  kind: CheckKind;
  subject: Subject;
  level: Level;
  /** watch 1, act 2, danger and pain 6+ 3, note and good news 0. */
  points: number;
  tier: Tier | null;
  /** One plain sentence with numbers and units; the key number between ** **. */
  sentence: string;
  /** A few words for "other reasons" on the board row. */
  short: string;
  since: string;
  step: ProposedStep;
  /** What would clear it, in words. */
  clears: string;
  evidence: Record<string, number | string | boolean | null>;
  working: Working;
};
export type NotEnoughHistory = {
  status: 'not-enough-history';
  kind: CheckKind;
  subject: Subject;
  /** What is missing, with the count: "19 of 28 days known". */
  missing: string;
};
/** `clear` with `lowerBound: true` must not close an open reason: unknown days could hide it. */
export type Clear = {
  status: 'clear';
  kind: CheckKind;
  subject: Subject;
  lowerBound?: boolean;
  /** Closes an open reason at once, in these words ("part of pain of 6 or more"). */
  why?: string;
  /** With subject key `*`: every subject not named is clear for reasons raised on or after this date. */
  coversFrom?: string;
};
export type Outcome = Flagged | NotEnoughHistory | Clear;

/** The day the checks look from: the evening before the night. */
export type AsOf = {
  /** Local date whose night this is: the last day that is complete. */
  date: string;
  /** The instant of the run, for waiting hours only. ISO. */
  instant: string;
};
