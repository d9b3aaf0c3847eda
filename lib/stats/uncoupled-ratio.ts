/**
 * Load of the latest week over the mean of the three weeks before it. No unit; `undefined` when those are all 0.
 * Lolli L et al., Br J Sports Med 2019;53(15):921-922. Example: 1600 after 1000, 1200, 1100 gives 1.4545.
 */
export function uncoupledRatio(
  latest: number,
  before: readonly [number, number, number],
): number | undefined {
  const mean = (before[0] + before[1] + before[2]) / 3;
  return mean > 0 ? latest / mean : undefined;
}
