import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import type { CheckKind, Level, Standing, Tier } from '#lib/domain/vocabulary.ts';
import type { SentencePart } from './sentence.ts';
import type { StripView } from './strip.ts';

/** A reason that is not closed, as the database keeps it. Dates are local, instants ISO in UTC. */
export type BoardReason = {
  id: string;
  clientId: string;
  kind: CheckKind;
  /** The ladder it is about, where it is about one. */
  ladderId: string | null;
  level: Level;
  points: number;
  tier: Tier | null;
  sentence: string;
  short: string;
  since: string;
  raisedAt: string;
  /** The coach's own date of `raisedAt`. */
  raisedOn: string;
  /** The proposed step in one line. */
  step: string;
  clears: string;
  daysKnown: { known: number; of: number } | null;
  state: string;
  asideUntil: string | null;
  withClientUntil: string | null;
  /** Folded as known with these words; null: it is not. */
  knownWords: string | null;
  /** The newest step that was taken for it and has an answer. */
  tried?: { takenOn: string; windowDays: number; outcome: SinceOutcome } | null;
};

export type BoardClient = {
  id: string;
  name: string;
  coachId: string;
  standing: Standing;
  /** Waiting questions, oldest first; `askedOn` on the coach's calendar. */
  questions: { id: string; text: string; askedOn: string; askedAt: string; stills: string[] }[];
  /** The last night that was due has not checked this client; `failed`: it tried. */
  notChecked: 'failed' | 'not-reached' | 'no-consent' | null;
  /** Joined, or was invited, on this date of their own; null: long ago. */
  firstDay: string | null;
  /** Dates with a check-in of the last 28 days; asked for in a client's first 28 days only. */
  dates: string[];
};

/** What is shown of a client beside the reasons. */
export type Contact = {
  /** Last check-in on the client's own wall clock: date and "19:40". */
  lastCheckIn: { date: string; time: string } | null;
  /** When a coach last said "seen", on the coach's wall clock. */
  seen: { date: string; time: string } | null;
};

export type BoardNight = {
  localDate: string;
  /** On the coach's wall clock, "05:12"; null while it runs. */
  endedAt: string | null;
  endedOn: string | null;
  due: number;
  done: number;
  failed: number;
  /** Of those due: where they live it is not 03:00 yet. */
  later: number;
  /** The night after this one should have begun an hour ago or more, and has not. */
  late: boolean;
  /** Clients whose night was not finished at 06:00 where they live; left out: it was, for all. */
  unfinishedAtSix?: number;
};

export type BoardFilter = {
  group?: Tier | undefined;
  reason?: CheckKind | undefined;
  skill?: string | undefined;
  q?: string | undefined;
  coach?: string | undefined;
};

export type BoardInput = {
  /** Every skill that somebody trains for, and who trains for the one of the filter. */
  skills: string[];
  ofSkill: ReadonlySet<string> | null;
  /** The coach's local date. */
  today: string;
  clients: BoardClient[];
  reasons: BoardReason[];
  coaches: { id: string; name: string }[];
  /** Coaches who are away today and whose clients count as one’s own. */
  covered?: string[];
  night: BoardNight | null;
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
  /** The further reasons in a few words each, all of them. */
  others: string[];
  kinds: CheckKind[];
  step: string;
  /** Put aside and Done ask for words first: a danger sign or pain of 6 and more. */
  needsWords: boolean;
  /** Nothing but a question waits: there is no reason to take, put aside or close. */
  onlyQuestion: boolean;
  /** It stands the same for the third morning. */
  mayBeKnown: boolean;
  /** The words it is folded with; null: it is not folded. */
  known: string | null;
  /** Waiting questions, oldest first. */
  questions: { id: string; text: string; stills: string[] }[];
  /** The ladder whose steps the strip shows; undefined: the newest. */
  ladderId: string | undefined;
  earned: boolean;
  /** Changes with what the row says. */
  print: string;
};

/** What orders and counts a row, without its words. */
export type BoardBrief = Pick<
  BoardRow,
  'clientId' | 'name' | 'tier' | 'points' | 'waitingSince' | 'kinds' | 'known' | 'print'
> & { questions: number };

/** A row with what is drawn of it. */
export type DrawnRow = BoardRow & {
  checkedIn: { said: string; exact: string };
  nextCheckIn: SaidDate;
  /** Words under the name once a coach said "seen" since the last check-in. */
  seen: string | null;
  strip: StripView;
};

/** Rows in the order of answering; those folded as known come after the others. */
export type BoardGroup = {
  tier: Tier;
  title: string;
  rows: BoardRow[];
  /** Rows of the group in all, and how many follow those that are there. */
  count: number;
  more: number;
};
/** The rows of a group that are there, drawn. */
export type DrawnGroup = Omit<BoardGroup, 'rows'> & { rows: DrawnRow[] };
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
  /** In their first 28 days, and no check says anything yet. */
  gettingToKnow: Waiting[];
  gettingToKnowWords: string;
  aside: Waiting[];
  withClient: Waiting[];
  questions: Waiting[];
  notChecked: Waiting[];
  night: BoardNight | null;
  /** Clients of this board, rows or not. */
  clients: number;
  /** All rows under the filter, in order. */
  order: BoardBrief[];
  /** One entry a row, to see what changed while the page is open. */
  prints: string;
  stripFrom: string;
  stripTo: string;
  options: { coaches: { id: string; name: string }[]; kinds: CheckKind[]; skills: string[] };
  filter: BoardFilter;
};

/** The board as it is shown: of each group its first rows. */
export type DrawnBoard = Omit<BoardView, 'groups'> & { groups: DrawnGroup[] };
