import type { Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';

const OTHER: Readonly<Record<string, string>> = { left: 'right', right: 'left' };

/** The same client in the mirror: every side named in the history is the other one. */
export function mirrored(history: ClientHistory): ClientHistory {
  return withSides(history) as ClientHistory;
}

function withSides(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withSides);
  if (typeof value !== 'object' || value === null) return value;
  const copy: Record<string, unknown> = { ...value };
  for (const [key, inner] of Object.entries(copy)) {
    if (key === 'side') copy[key] = OTHER[String(inner)] ?? inner;
    else if (typeof inner === 'object') copy[key] = withSides(inner);
  }
  return copy;
}

/** Sides in words, but not what is left of a plan, left out of a count, or said of both. */
const SIDE_WORDS = /(?<!days |and |against )\b(left|right)\b(?! out| and right| against right)/gi;
const COUNTS_OF_BOTH = /(\d+) and (\d+)( of \d+ sets left and right)/g;

/** What would be said of the mirror image, in no order: sides come in the order of their names. */
export function inMirror(outcomes: readonly Outcome[]): string[] {
  return asTexts(outcomes)
    .map((text) => text.replace(SIDE_WORDS, mirroredWord).replace(COUNTS_OF_BOTH, '$2 and $1$3'))
    .sort();
}

function mirroredWord(word: string): string {
  const other = OTHER[word.toLowerCase()] ?? word;
  return word.charAt(0) === word.charAt(0).toUpperCase()
    ? other.charAt(0).toUpperCase() + other.slice(1)
    : other;
}

/** Each outcome as a text. Of two sore places inside a load jump the first by name is noted: that may be the other. */
export function asTexts(outcomes: readonly Outcome[]): string[] {
  return outcomes
    .map((each) => JSON.stringify(each).replace(/"reduceAt":"[^"]*"/, '"reduceAt":"a place"'))
    .sort();
}

const DATES = /\d{4}-\d{2}-\d{2}/g;

/** Everything that happened, so many days later. */
export function moved<T>(value: T, days: number): T {
  const text = JSON.stringify(value).replace(DATES, (date) => addDays(date, days));
  return JSON.parse(text) as T;
}

const IN_WORDS = /(Sun|Mon|Tue|Wed|Thu|Fri|Sat) \d+ (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)/g;

/** What was said, with days counted from the evening looked from instead of dates. */
export function withoutDates(outcomes: readonly Outcome[], date: string): string[] {
  return outcomes.map((each) =>
    JSON.stringify(each)
      .replace(DATES, (other) => `day ${daysBetween(date, other)}`)
      .replace(IN_WORDS, 'a day'),
  );
}
