import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import type { ProposedStep } from '#lib/domain/finding.ts';

/** Each kind of step in a few words, lower case. */
export const STEP_WORDS: Record<ProposedStep['kind'], string> = {
  'step-up': 'step up',
  'one-rung-back': 'one rung back',
  hold: 'hold',
  'cut-volume': 'less volume',
  'drop-a-goal': 'a goal dropped',
  'ask-film': 'film asked for',
  'send-to-clinician': 'sent to a clinician',
  'more-time': 'more time for it',
  'write-first': 'wrote first',
  answer: 'answered',
  'new-plan': 'new plan',
  look: 'looked at',
  'one-side-back': 'one side one support back',
};

export const OUTCOME_WORDS: Record<SinceOutcome, string> = {
  better: 'better',
  same: 'the same',
  worse: 'worse',
  'not-known': 'not known',
  'not-yet': 'not yet',
};
