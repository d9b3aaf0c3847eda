import type { DangerNow } from '../dangers-now.ts';

/** A stretch of a question from its character `at` on; `danger`: the words of a danger sign. */
export type AskedPart = { at: number; text: string; danger: boolean };

export type EarlierReply = {
  id: string;
  question: string;
  text: string;
  /** "Ines Halloran to Caetano Brum, Tue 3 Nov". */
  who: string;
};

/** What a coach wants to know of a client before answering. */
export type ReplyContext = {
  /** Danger signs that nobody has cleared, said first. */
  dangers: DangerNow[];
  /** Open reasons in the order of answering, without the danger signs above and that a question waits. */
  reasons: { id: string; kind: string; sentence: string }[];
  /** Lines of the plan that the question speaks of. */
  drills: string[];
  /** Limits in force, with until when. */
  limits: string[];
  /** The last check-in, in words. */
  lastCheckIn: string;
  words: string;
};

export type WaitingReply = {
  id: string;
  clientId: string;
  name: string;
  asked: AskedPart[];
  /** Holds the words of a danger sign: answered first, counted round the clock. */
  danger: boolean;
  hours: number;
  /** "4 h in answering hours", "30 h, round the clock". */
  waited: string;
  since: string;
  sinceExact: string;
  stills: string[];
  seen: string;
  context: ReplyContext;
  earlier: EarlierReply[];
};
