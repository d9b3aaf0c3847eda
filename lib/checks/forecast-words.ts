import { monthName } from '#lib/domain/month-names.ts';
import { counted } from './words.ts';

type Said = { goal: string; early: string; middle: string; late: string; passed: number; usualOnly: boolean };

/** One plain sentence: "Free hold, 60 s: between March and August 2027, most likely May; 2 rungs passed here, …". */
export function forecastSentence({ goal, early, middle, late, passed, usualOnly }: Said): string {
  const between = betweenMonths(early, late);
  if (usualOnly) {
    const here = passed === 0 ? 'no rung passed here yet' : `only ${counted(passed, 'rung')} passed here`;
    return `${goal}: ${between} by the library's usual times alone; ${here}.`;
  }
  const [oneMonth, oneYear] = [7, 4].map((length) => early.slice(0, length) === late.slice(0, length));
  const likely = oneMonth ? '' : `, most likely ${oneYear ? monthName(middle) : monthAndYear(middle)}`;
  return `${goal}: ${between}${likely}; ${counted(passed, 'rung')} passed here, the rest from the library's usual times.`;
}

/** "between March and August 2027", "between November 2026 and May 2027", "in March 2027". */
function betweenMonths(early: string, late: string): string {
  if (early.slice(0, 7) === late.slice(0, 7)) return `in ${monthAndYear(late)}`;
  const first = early.slice(0, 4) === late.slice(0, 4) ? monthName(early) : monthAndYear(early);
  return `between ${first} and ${monthAndYear(late)}`;
}

function monthAndYear(date: string): string {
  return `${monthName(date)} ${date.slice(0, 4)}`;
}
