/**
 * Running sum of what lies above `target` + `slack`, never under 0 (Page 1954; tabular form of the NIST/SEMATECH
 * e-Handbook 6.3.2.3). One sum for each value, in the order given; empty for no values.
 */
export function cusum(values: readonly number[], target: number, slack: number): number[] {
  let sum = 0;
  return values.map((value) => {
    sum = Math.max(0, sum + value - target - slack);
    return sum;
  });
}
