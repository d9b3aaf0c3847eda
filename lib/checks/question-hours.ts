import type { AnsweringHours } from '#lib/domain/history.ts';
import { hoursWaited } from './answering-hours.ts';
import { hasDangerWords } from './danger-words.ts';
import type { Limits } from './thresholds.ts';

/** `hours` is at least what was waited once `capped`: beyond twice what asks for an answer nobody counts on. */
export type QuestionHours = { hours: number; danger: boolean; capped: boolean };

/**
 * Hours a question has waited at an instant (ISO): inside the team's answering hours, round the clock where its words
 * speak of a danger sign or where the team has told no hours. The check and the page of replies both ask here.
 */
export function questionHours(
  question: { text: string; askedAt: string },
  at: string,
  { answering, limits }: { answering: AnsweringHours | undefined; limits: Limits },
): QuestionHours {
  const danger = hasDangerWords(question.text);
  const enough = limits['questionWaiting.actHours'] * 2;
  const hours = hoursWaited(question.askedAt, at, danger ? undefined : answering, enough);
  const counted = !danger && answering !== undefined && answering.days.length > 0;
  return { hours, danger, capped: counted && hours >= enough };
}

/** Whole hours as they are said: rounded down, a hair of floating point aside. */
export function wholeHours(hours: number): number {
  return Math.floor(hours + 1e-9);
}
