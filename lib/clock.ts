import { readFileSync } from 'node:fs';

/**
 * The only clock of the product. With PLUMBLINE_CLOCK_FILE set (browser tests), time stands at the ISO
 * instant in that file; everywhere else it is the machine's.
 */
export function now(): Date {
  const file = process.env.PLUMBLINE_CLOCK_FILE;
  if (!file) return new Date();
  return new Date(readFileSync(file, 'utf8').trim());
}
