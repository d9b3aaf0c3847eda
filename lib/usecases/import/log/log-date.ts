import { isLocalDate } from '#lib/domain/local-date.ts';

/** `year-first` 2024-03-31, `day-first` 31.3.2024 and 31/03/2024, `month-first` 3/31/2024. */
export const DATE_ORDERS = ['year-first', 'day-first', 'month-first'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

const NUMBERS = /^(\d{1,4})[-./](\d{1,2})[-./](\d{1,4})$/;

/** The date in a cell, read in one order; a time of day behind it is left out. Undefined: none that exists. */
export function logDate(cell: string, order: DateOrder): string | undefined {
  const found = NUMBERS.exec(cell.trim().split(/[T ]/, 1)[0] ?? '');
  if (!found) return undefined;
  const [, a = '', b = '', c = ''] = found;
  const [year, month, day] =
    order === 'year-first' ? [a, b, c] : order === 'day-first' ? [c, b, a] : [c, a, b];
  if (year.length !== 4 || day.length > 2) return undefined;
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  return isLocalDate(date) ? date : undefined;
}

/**
 * Orders in which every cell is a date. More than one (03/04/2024 throughout): the person has to say which; none: it is
 * not a column of dates.
 */
export function dateOrdersOf(cells: readonly string[]): DateOrder[] {
  const filled = cells.filter((cell) => cell.trim() !== '');
  if (filled.length === 0) return [];
  return DATE_ORDERS.filter((order) => filled.every((cell) => logDate(cell, order) !== undefined));
}
