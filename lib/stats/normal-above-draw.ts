import type { SeededDraws } from './seeded-draws.ts';

/** One draw of a standard normal that lies above `bound`, by Robert (1995, Stat Comput 5:121-125). */
export function normalAboveDraw(bound: number, draws: SeededDraws): number {
  if (bound <= 0) {
    for (;;) {
      const z = draws.normal();
      if (z > bound) return z;
    }
  }
  const rate = (bound + Math.sqrt(bound * bound + 4)) / 2;
  for (;;) {
    const z = bound - Math.log(draws.uniform()) / rate;
    if (Math.log(draws.uniform()) < -((z - rate) ** 2) / 2) return z;
  }
}
