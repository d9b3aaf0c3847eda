import { medianAbsoluteDeviation as unscaled } from 'simple-statistics';

/** Makes the median absolute deviation of a normal equal its standard deviation: 1 / quantile(0.75). */
const TO_STANDARD_DEVIATION = 1.4826;

/** Robust spread: 1.4826 x median distance from the median. Undefined for no values; 0 for one. */
export function medianAbsoluteDeviation(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : TO_STANDARD_DEVIATION * unscaled([...values]);
}
