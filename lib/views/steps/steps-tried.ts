import type { Limits } from '#lib/checks/thresholds.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { KIND_WORDS } from '../board-words.ts';
import { datedDay, exactDate } from '../say-date.ts';
import { STEP_WORDS } from './step-words.ts';
import { type FollowedFrom, type WindowSaid, windowsSaid } from './windows-said.ts';

type Step = FollowedFrom & {
  id: string;
  reasonId: string | null;
  stepKind: keyof typeof STEP_WORDS;
  words: string;
  by: string;
};

export type StepTried = {
  id: string;
  reasonId: string | null;
  when: string;
  exact: string;
  /** "One rung back, for: stalled". */
  what: string;
  words: string;
  by: string;
  windows: WindowSaid[];
  /** Said where no window is: why it is not followed. */
  notFollowed: string;
};

/** Steps taken for a client, newest first, each with what its windows came to and what is still to come. */
export function stepsTried(steps: readonly Step[], today: string, limits: Limits): StepTried[] {
  return steps.map((step) => {
    const windows = windowsSaid(step, today, limits);
    const what = asSentence(STEP_WORDS[step.stepKind] ?? step.stepKind);
    return {
      id: step.id,
      reasonId: step.reasonId,
      when: datedDay(step.from, today),
      exact: exactDate(step.from),
      what: step.reasonKind === null ? what : `${what}, for: ${KIND_WORDS[step.reasonKind]}`,
      words: step.words,
      by: step.by,
      windows,
      notFollowed: windows.length > 0 ? '' : 'Not followed: nothing of it is measured.',
    };
  });
}
