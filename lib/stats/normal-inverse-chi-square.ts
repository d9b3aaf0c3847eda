/**
 * What is believed of a normal with unknown mean and variance: the mean is `mean`, worth `meanCount` values; the
 * variance is `variance`, worth `varianceCount` values.
 */
export type NormalBelief = { mean: number; meanCount: number; variance: number; varianceCount: number };

/**
 * The belief after seeing `values` (conjugate normal-inverse-chi-square; Gelman et al., Bayesian Data Analysis 3.3;
 * Hoff 2009, 5.3). No values: the belief as it was.
 */
export function updatedBelief(prior: NormalBelief, values: readonly number[]): NormalBelief {
  const n = values.length;
  if (n === 0) return prior;
  const average = values.reduce((sum, value) => sum + value, 0) / n;
  const squares = values.reduce((sum, value) => sum + (value - average) ** 2, 0);
  const meanCount = prior.meanCount + n;
  const varianceCount = prior.varianceCount + n;
  const apart = ((prior.meanCount * n) / meanCount) * (average - prior.mean) ** 2;
  return {
    mean: (prior.meanCount * prior.mean + n * average) / meanCount,
    meanCount,
    variance: (prior.varianceCount * prior.variance + squares + apart) / varianceCount,
    varianceCount,
  };
}
