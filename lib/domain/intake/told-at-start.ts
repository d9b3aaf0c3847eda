import { DANGER_SIGN_LABELS } from '../labels.ts';
import { DANGER_SIGNS, type DangerSign } from '../vocabulary.ts';
import { HEALTH_LABELS, HEALTH_QUESTIONS, type HealthQuestion } from './health-questions.ts';

/** What was said yes to at the start, as limits and clinicians' words name it: a health question, or `sign:` and the sign. */
export type ToldAtStart = HealthQuestion | `sign:${DangerSign}`;

export const TOLD_AT_START: readonly ToldAtStart[] = [
  ...DANGER_SIGNS.map((sign) => `sign:${sign}` as const),
  ...HEALTH_QUESTIONS,
];

export function isSign(told: ToldAtStart): told is `sign:${DangerSign}` {
  return told.startsWith('sign:');
}

/** "high blood pressure not under control", "chest pain". Unknown: as it is. */
export function toldInWords(told: string): string {
  const [, sign] = told.split('sign:');
  if (sign) return DANGER_SIGN_LABELS[sign as DangerSign] ?? sign;
  return HEALTH_LABELS[told as HealthQuestion] ?? told;
}

/** What a yes holds: a danger sign the whole plan, a health question what is upside down. */
export function heldBy(told: ToldAtStart): 'none' | 'no-upside-down' {
  return isSign(told) ? 'none' : 'no-upside-down';
}

/** The hold of a yes as a limit: what it rules out, who says so, in words. */
export function holdOf(told: ToldAtStart) {
  return {
    told,
    rule: heldBy(told),
    who: isSign(told) ? 'a danger sign told at the start' : 'the health questions at the start',
    words: `Said yes at the start: ${toldInWords(told)}. Until a clinician’s word is recorded.`,
  };
}

/** A hold that stands or is to come; `told` as it is kept. */
export type ToldHold = { told: string; from: string };

/** A clinician's word about a yes of the start; `by`: the member who recorded it. */
export type ToldWord = {
  told: string;
  date: string;
  clinician: string;
  words: string;
  lifts: boolean;
  reviewOn: string | null;
  by: string | null;
};

/** What of a client's start waits: holds, the yes of a parent or guardian, answers that nobody has looked at. */
export type StartNews = {
  clientId: string;
  name: string;
  told: string[];
  guardian: boolean;
  sentAt: Date | null;
};
