import { median as medianOf } from 'simple-statistics';

/** Middle value; the mean of the two middle ones for an even count. Undefined for no values. */
export function median(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : medianOf([...values]);
}
