import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import { saidDate } from '../say-date.ts';
import { OUTCOME_WORDS } from './step-words.ts';

/** The newest answer about a step in a few words: "step tried 12 Nov: the same after 14 days". */
export function triedInWords(step: {
  takenOn: string;
  windowDays: number;
  outcome: SinceOutcome;
  today: string;
}): string {
  return `step tried ${saidDate(step.takenOn, step.today)}: ${OUTCOME_WORDS[step.outcome]} after ${step.windowDays} days`;
}
