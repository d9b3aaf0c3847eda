import type { ProposedStep, Subject } from '#lib/domain/finding.ts';
import type { CheckKind, Level, Standing, Tier } from '#lib/domain/vocabulary.ts';
import type { SentencePart } from './sentence.ts';
import type { StripDays, StripView } from './strip.ts';

/** A reason that is not closed, as the database keeps it. Dates are local, instants ISO in UTC. */
export type BoardReason = {
  id: string;
  clientId: string;
  kind: CheckKind;
  subject: Subject;
  level: Level;
  points: number;
  tier: Tier | null;
  sentence: string;
  short: string;
  since: string;
  raisedAt: string;
  step: ProposedStep;
  clears: string;
  daysKnown: { known: number; of: number } | null;
  state: string;
  asideUntil: string | null;
  withClientUntil: string | null;
};

export type BoardClient = {
  id: string;
  name: string;
  coachId: string;
  standing: Standing;
  /** Last check-in on the client's own wall clock: date and "19:40". */
  lastCheckIn: { date: string; time: string } | null;
  /** Waiting questions, oldest first. */
  questions: { id: string; text: string; askedOn: string; stills: string[] }[];
  /** When a coach last said "seen", on the coach's wall clock. */
  seen: { date: string; time: string } | null;
  skills: string[];
  /** The last night did not reach this client. */
  notChecked: boolean;
};

export type BoardNight = {
  localDate: string;
  /** On the coach's wall clock, "05:12"; null while it runs. */
  endedAt: string | null;
  endedOn: string | null;
  due: number;
  done: number;
  failed: number;
};

export type BoardFilter = {
  group?: Tier | undefined;
  reason?: CheckKind | undefined;
  skill?: string | undefined;
  q?: string | undefined;
  coach?: string | undefined;
};

export type BoardInput = {
  /** The coach's local date. */
  today: string;
  clients: BoardClient[];
  reasons: BoardReason[];
  coaches: { id: string; name: string }[];
  night: BoardNight | null;
  strips: ReadonlyMap<string, StripDays>;
  filter: BoardFilter;
};

export type SaidDate = { date: string; said: string; exact: string };

export type BoardRow = {
  clientId: string;
  name: string;
  tier: Tier;
  points: number;
  waitingSince: string;
  sentence: SentencePart[];
  since: SaidDate;
  others: string[];
  kinds: CheckKind[];
  checkedIn: { said: string; exact: string };
  step: string;
  /** Put aside and Done ask for words first: a danger sign or pain of 6 and more. */
  needsWords: boolean;
  nextCheckIn: SaidDate;
  /** Waiting questions, oldest first. */
  questions: { id: string; text: string; stills: string[] }[];
  /** Words under the name once a coach said "seen" since the last check-in. */
  seen: string | null;
  strip: StripView;
};

export type BoardGroup = { tier: Tier; title: string; rows: BoardRow[] };
/** `stills`: ids of the pictures sent with a waiting question. */
export type Waiting = { clientId: string; name: string; words: string; stills?: string[] };

export type BoardView = {
  state: 'rows' | 'nothing-new' | 'night-running' | 'night-failed' | 'filtered' | 'no-clients';
  day: string;
  headline: string;
  people: number;
  minutes: number;
  groups: BoardGroup[];
  hidden: number;
  nothingNew: Waiting[];
  aside: Waiting[];
  withClient: Waiting[];
  questions: Waiting[];
  notChecked: Waiting[];
  night: BoardNight | null;
  stripFrom: string;
  stripTo: string;
  options: { coaches: { id: string; name: string }[]; kinds: CheckKind[]; skills: string[] };
  filter: BoardFilter;
};
