import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { ClientRecord, LoadDay } from '#lib/domain/record.ts';
import type { Weeks } from '../weeks.ts';

/** Rows of the record that a report reads whole; sets and pain come from the history. */
export type ReportRecord = Pick<
  ClientRecord,
  | 'checkIns'
  | 'reasons'
  | 'verdicts'
  | 'steps'
  | 'leftAlone'
  | 'plans'
  | 'questions'
  | 'limits'
  | 'clinicianWords'
  | 'films'
  | 'intake'
  | 'consents'
  | 'absences'
  | 'goals'
>;

/** What people wrote and chose for this pack; null: nothing was written. */
export type PackWords = {
  why: string;
  forWhom: string;
  summary: string | null;
  /** What the coach would do next, and what would change their mind. */
  next: string | null;
  /** How to speak with the client; promises made. */
  manner: string | null;
};
export type PackAbout = {
  team: string;
  coach: string;
  madeBy: string;
  goal: string;
  birthYear: number | null;
  usualSessionMinutes: number | null;
};

export type ReportInput = {
  history: ClientHistory;
  view: ClientView;
  limits: Limits;
  days: readonly LoadDay[];
  weeks: Weeks;
  period: { from: string; to: string };
  /** The client's own date when it is made. */
  today: string;
  made: Date;
  record: ReportRecord;
  about: PackAbout;
  words: PackWords;
};
