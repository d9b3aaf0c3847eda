import type { Fact, Flagged, Working } from '#lib/domain/finding.ts';
import { type LimitId, type Limits, usedThresholds } from './thresholds.ts';
import { pointsOf, tierOf } from './urgency.ts';

type Found = Omit<Flagged, 'status' | 'points' | 'tier' | 'working'> & {
  /** Where the tier is not the usual one of its kind and level. */
  tier?: Flagged['tier'];
  inputs: Fact[];
  formula: string;
  thresholds: readonly LimitId[];
  daysKnown?: Working['daysKnown'];
  doubt: string;
};

/** A finding with points, tier and working filled in from kind, level and the limits in force. */
export function findingOf(found: Found, limits: Limits): Flagged {
  const { inputs, formula, thresholds, daysKnown, doubt, tier, ...rest } = found;
  return {
    status: 'flagged',
    ...rest,
    points: pointsOf(found.kind, found.level, limits),
    tier: tier === undefined ? tierOf(found.kind, found.level) : tier,
    working: {
      inputs,
      formula,
      thresholds: usedThresholds(thresholds, limits),
      daysKnown: daysKnown ?? null,
      doubt,
    },
  };
}

/** How many of the days are known, for a working. */
export function daysKnownOf(days: readonly { state: string }[]): { known: number; of: number } {
  return { known: days.filter((day) => day.state !== 'unknown').length, of: days.length };
}
