import type { SeededDraws } from './seeded-draws.ts';

/** One draw of chi-square with `degrees` of freedom (over 0), by Marsaglia & Tsang (2000, ACM TOMS 26(3)). */
export function chiSquareDraw(degrees: number, draws: SeededDraws): number {
  const shape = degrees / 2;
  // Under 1 the method does not hold; a draw of the next shape is scaled down.
  if (shape < 1) return chiSquareDraw(degrees + 2, draws) * draws.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = draws.normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(draws.uniform()) < (z * z) / 2 + d - d * v + d * Math.log(v)) return 2 * d * v;
  }
}
