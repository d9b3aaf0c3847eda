import type { Outcome } from '#lib/domain/finding.ts';
import { dangerSign } from './rules/danger-sign.ts';
import { painHigh } from './rules/pain-high.ts';
import { DEFAULT_LIMITS, type Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** What cannot wait for the night: danger signs and pain of 6 or more, for one check-in at once. */
export function urgentOutcomes(view: ClientView, limits: Limits = DEFAULT_LIMITS): Outcome[] {
  return [...dangerSign.evaluate(view, limits), ...painHigh.evaluate(view, limits)];
}
