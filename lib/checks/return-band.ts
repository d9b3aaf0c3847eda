import type { LimitId, Limits } from './thresholds.ts';

export type Band = { share: LimitId; step: string };

/** The share of the usual week that the first week after so many days may be, and the step. */
export function bandOf(days: number, limits: Limits): Band {
  if (days >= limits['day.newStartDays']) {
    return { share: 'returnTooFast.longShare', step: 'Start again as new: place every ladder afresh' };
  }
  if (days >= limits['returnTooFast.longDays']) {
    return { share: 'returnTooFast.longShare', step: 'Take volume out; holds two rungs back' };
  }
  if (days >= limits['returnTooFast.mediumDays']) {
    return { share: 'returnTooFast.mediumShare', step: 'Take volume out; holds one rung back' };
  }
  return {
    share: 'returnTooFast.shortShare',
    step: 'Take volume out for this week, then go back up in steps',
  };
}
