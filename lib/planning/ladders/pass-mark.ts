import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Measure } from '#lib/domain/vocabulary.ts';
import type { PassMark } from './ladder-state.ts';

/** "4 × 10 s on 2 days", "8 of 10 tries on 3 days"; degrees and cm as one reading. */
export function passMarkInWords(pass: PassMark, measure: Measure): string {
  const days = pass.days === 1 ? '1 day' : `${pass.days} days`;
  return `${passDose(pass, measure)} on ${days}`;
}

/** The same without the days: "4 × 10 s". */
export function passDose(pass: PassMark, measure: Measure): string {
  if (measure === 'made-tried') return `${pass.target} of ${pass.tries ?? pass.target} tries`;
  const unit = MEASURE_UNITS[measure];
  const amount = unit === '' || unit === '°' ? `${pass.target}${unit}` : `${pass.target} ${unit}`;
  return measure === 'range-up' || measure === 'range-down' ? amount : `${pass.sets} × ${amount}`;
}
