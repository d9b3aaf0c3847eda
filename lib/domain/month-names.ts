const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** Name of the month of a calendar date 'YYYY-MM-DD'. */
export function monthName(date: string): string {
  return MONTHS[Number(date.slice(5, 7)) - 1] ?? '';
}
