/** One number that decides, in its unit, with what it means and who says so. */
export type Threshold = { value: number; unit: string; meaning: string; source: string };

/** Our own choice, tried on simulated clients with a known truth; no study stands behind the number. */
export const OWN = 'own choice, tried on simulated clients';
export const PRACTICE = 'common practice, no source';

export function threshold(value: number, unit: string, meaning: string, source: string = OWN): Threshold {
  return { value, unit, meaning, source };
}
