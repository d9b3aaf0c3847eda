import type { SeededDraws } from './seeded-draws.ts';

/** One draw of chi-square with 1 or more `degrees` of freedom, by Marsaglia & Tsang (2000, ACM TOMS 26(3)). */
export function chiSquareDraw(degrees: number, draws: SeededDraws): number {
  const d = degrees / 2 - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = draws.normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(draws.uniform()) < (z * z) / 2 + d - d * v + d * Math.log(v)) return 2 * d * v;
  }
}
