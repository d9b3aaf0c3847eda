import { chiSquareDraw } from '#lib/stats/chi-square-draw.ts';
import { normalAboveDraw } from '#lib/stats/normal-above-draw.ts';
import { normalCdf } from '#lib/stats/normal-cdf.ts';
import { updatedBelief } from '#lib/stats/normal-inverse-chi-square.ts';
import { seededDraws } from '#lib/stats/seeded-draws.ts';
import { weightedQuantiles } from '#lib/stats/weighted-quantiles.ts';
import type { Limits } from './thresholds.ts';

/** One rung behind the client: the days it took, against the days it usually takes. */
export type RungTime = { days: number; usualDays: number };
export type TimeAsked = {
  /** Stable text: the same text and numbers give the same answer. */
  seed: string;
  /** Rungs passed here. With none, the spreads are taken as they are set: nothing here says otherwise. */
  passed: readonly RungTime[];
  /** The rung stood on: `days` spent on it already, `usualDays` for all of it. */
  now: RungTime;
  /** Usual days of each rung after it, up to the goal. */
  ahead: readonly number[];
};
/** Days from now, shortest first: 10, 50 and 90 of 100 draws are done by then. */
export type TimeLeft = { early: number; middle: number; late: number };
/** The time to the goal, and from now until each rung on the way is passed, the one stood on first. */
export type TimeToGoal = TimeLeft & { steps: TimeLeft[] };

/**
 * How many days from now until the goal rung is passed. Time on a rung is log-normal around its usual time; the pace of
 * the client (drawn once for all rungs) is that of all clients, drawn toward the client's own rungs by a
 * normal-inverse-chi-square posterior (Gelman et al., Bayesian Data Analysis 3.3). The rung stood on takes longer than
 * it has taken already, and what it has taken says something about the pace. Usual days must be over 0; rungs passed
 * with 0 days are left out. The spreads are settings; the draws are seeded.
 */
export function timeToGoal({ seed, passed, now, ahead }: TimeAsked, limits: Limits): TimeToGoal {
  const draws = seededDraws(seed);
  const count = limits['forecast.draws'];
  const belief = updatedBelief(
    {
      mean: 0,
      meanCount: (limits['forecast.spreadWithin'] / limits['forecast.spreadBetween']) ** 2,
      variance: limits['forecast.spreadWithin'] ** 2,
      varianceCount: limits['forecast.spreadWorth'],
    },
    passed.filter(({ days }) => days > 0).map(({ days, usualDays }) => Math.log(days / usualDays)),
  );
  // With 0 days minus infinity: every time is above it, with weight 1.
  const spent = Math.log(now.days / now.usualDays);
  const steps = [now.usualDays, ...ahead].map(() => new Float64Array(count));
  const weights = new Float64Array(count);
  for (const index of weights.keys()) {
    const variance =
      passed.length === 0
        ? belief.variance
        : (belief.varianceCount * belief.variance) / chiSquareDraw(belief.varianceCount, draws);
    // The rung stood on first, with the pace not yet known; then the pace, knowing how long that rung takes.
    const spread = Math.sqrt(variance * (1 + 1 / belief.meanCount));
    const bound = (spent - belief.mean) / spread;
    const here = belief.mean + spread * normalAboveDraw(bound, draws);
    const { mean, meanCount } = updatedBelief(belief, [here]);
    const pace = mean + Math.sqrt(variance / meanCount) * draws.normal();
    const within = Math.sqrt(variance);
    let days = Math.exp(here) * now.usualDays - now.days;
    steps.forEach((step, at) => {
      if (at > 0) days += (ahead[at - 1] ?? 0) * Math.exp(pace + within * draws.normal());
      step[index] = days;
    });
    weights[index] = normalCdf(-bound);
  }
  const ranges = steps.map((days) => rangeOf(days, weights));
  return { ...(ranges.at(-1) ?? { early: 0, middle: 0, late: 0 }), steps: ranges };
}

function rangeOf(days: Float64Array, weights: Float64Array): TimeLeft {
  const [early = 0, middle = 0, late = 0] = weightedQuantiles(days, weights, [0.1, 0.5, 0.9]);
  return { early, middle, late };
}
