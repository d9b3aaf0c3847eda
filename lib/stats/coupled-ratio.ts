/**
 * Load of the latest week over the mean of the latest four (the latest among them). No unit; never over 4.
 * `undefined` when all four are 0. Rolling form of Gabbett, Br J Sports Med 2016;50(5):273-280.
 * Example: 1600 after 1000, 1200, 1100 gives 1.3061.
 */
export function coupledRatio(latest: number, before: readonly [number, number, number]): number | undefined {
  const mean = (latest + before[0] + before[1] + before[2]) / 4;
  return mean > 0 ? latest / mean : undefined;
}
