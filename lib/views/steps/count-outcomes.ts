import { SINCE_OUTCOMES, type SinceOutcome } from '#lib/checks/better-since/types.ts';

/** Under this many, shares are not said: one more or less would move them by ten points and more. */
const SHARES_FROM = 10;
const PERCENT = 100;

export type Counted = { n: number } & Record<SinceOutcome, number>;
export type CountsSaid = { n: number } & Record<SinceOutcome, string>;

/** How many there are of each outcome. */
export function countOutcomes(outcomes: readonly SinceOutcome[]): Counted {
  const counts: Counted = { n: outcomes.length, better: 0, same: 0, worse: 0, 'not-known': 0, 'not-yet': 0 };
  for (const outcome of outcomes) counts[outcome] += 1;
  return counts;
}

/**
 * Counts in words: from ten that are known on, better, same and worse with their share of these ("6, 43 %"); the rest
 * are counts. What is not known or not yet over is in no share.
 */
export function countsSaid(counts: Counted): CountsSaid {
  const known = counts.better + counts.same + counts.worse;
  const said = (outcome: SinceOutcome) => {
    const count = counts[outcome];
    const isShared = known >= SHARES_FROM && outcome !== 'not-known' && outcome !== 'not-yet';
    return isShared ? `${count}, ${Math.round((count / known) * PERCENT)} %` : String(count);
  };
  const all = SINCE_OUTCOMES.map((outcome) => [outcome, said(outcome)] as const);
  return { n: counts.n, ...(Object.fromEntries(all) as Record<SinceOutcome, string>) };
}
