import { askedNoAnswer } from './rules/asked-no-answer.ts';
import { dangerSign } from './rules/danger-sign.ts';
import { fading } from './rules/fading.ts';
import { filmWaiting } from './rules/film-waiting.ts';
import { goneQuiet } from './rules/gone-quiet.ts';
import { limitEnding } from './rules/limit-ending.ts';
import { loadJump } from './rules/load-jump.ts';
import { newHardest } from './rules/new-hardest.ts';
import { noLetUp } from './rules/no-let-up.ts';
import { notSeen } from './rules/not-seen.ts';
import { oneSideFault } from './rules/one-side-fault.ts';
import { painAfterGround } from './rules/pain-after-ground.ts';
import { painHigh } from './rules/pain-high.ts';
import { painLingering } from './rules/pain-lingering.ts';
import { painRising } from './rules/pain-rising.ts';
import { planEnding } from './rules/plan-ending.ts';
import { planOutgrown } from './rules/plan-outgrown.ts';
import { questionWaiting } from './rules/question-waiting.ts';
import { returnTooFast } from './rules/return-too-fast.ts';
import { sideGap } from './rules/side-gap.ts';
import { slipping } from './rules/slipping.ts';
import { stackedStress } from './rules/stacked-stress.ts';
import { stalled } from './rules/stalled.ts';
import { stepUpEarned } from './rules/step-up-earned.ts';
import { tooHard } from './rules/too-hard.ts';
import { tooLittleTime } from './rules/too-little-time.ts';
import { tooManyGoals } from './rules/too-many-goals.ts';
import { windowGap } from './rules/window-gap.ts';
import type { Check } from './types.ts';

/** Every check, in the order in which kinds are named. Adding one: a file in `rules/`, its test, a line here. */
export const CHECKS: readonly Check[] = [
  dangerSign,
  painHigh,
  painRising,
  painLingering,
  painAfterGround,
  loadJump,
  newHardest,
  stackedStress,
  noLetUp,
  returnTooFast,
  tooManyGoals,
  tooHard,
  planOutgrown,
  stalled,
  slipping,
  tooLittleTime,
  windowGap,
  sideGap,
  oneSideFault,
  goneQuiet,
  fading,
  questionWaiting,
  filmWaiting,
  planEnding,
  notSeen,
  askedNoAnswer,
  limitEnding,
  stepUpEarned,
];
