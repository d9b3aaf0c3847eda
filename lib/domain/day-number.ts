/**
 * Days since 1970-01-01 of a calendar date 'YYYY-MM-DD'; whole numbers, so that days can be counted and compared
 * without clocks. Proleptic Gregorian, after the era arithmetic used by C++ chrono. The text must be a date.
 */
export function dayNumber(date: string): number {
  const year = digits(date, 0, 4);
  const month = digits(date, 5, 7);
  const day = digits(date, 8, 10);
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** The calendar date 'YYYY-MM-DD' of a day number; the inverse of `dayNumber`. */
export function dateOfDayNumber(number: number): string {
  const known = texts.get(number);
  if (known !== undefined) return known;
  const text = new Date(number * 86_400_000).toISOString().slice(0, 10);
  if (texts.size < MOST_TEXTS) texts.set(number, text);
  return text;
}

/** Dates are asked for again and again, night after night; twenty thousand of them are still small. */
const texts = new Map<number, string>();
const MOST_TEXTS = 20_000;

function digits(text: string, from: number, to: number): number {
  let value = 0;
  for (let index = from; index < to; index += 1) value = value * 10 + (text.charCodeAt(index) - 48);
  return value;
}
