import { monthName } from '#lib/domain/month-names.ts';
import { counted } from './words.ts';

type Said = { goal: string; early: string; middle: string; late: string; passed: number; usualOnly: boolean };

/** One plain sentence: "Last rung, Free hold: probably between March and August 2027, most likely May; 2 rungs passed here, …". */
export function forecastSentence({ goal, early, middle, late, passed, usualOnly }: Said): string {
  const between = betweenMonths(early, late);
  if (usualOnly) {
    const here = passed === 0 ? 'no rung passed here yet' : `only ${counted(passed, 'rung')} passed here`;
    return `Last rung, ${goal}: ${between} by the library's usual times alone; ${here}.`;
  }
  const [oneMonth, oneYear] = [7, 4].map((length) => early.slice(0, length) === late.slice(0, length));
  const likely = oneMonth ? '' : `, most likely ${oneYear ? monthName(middle) : monthAndYear(middle)}`;
  return `Last rung, ${goal}: ${between}${likely}; ${counted(passed, 'rung')} passed here, the rest from the library's usual times.`;
}

/** "probably between March and August 2027", "… November 2026 and May 2027", "probably in March 2027". */
function betweenMonths(early: string, late: string): string {
  if (early.slice(0, 7) === late.slice(0, 7)) return `probably in ${monthAndYear(late)}`;
  const first = early.slice(0, 4) === late.slice(0, 4) ? monthName(early) : monthAndYear(early);
  return `probably between ${first} and ${monthAndYear(late)}`;
}

function monthAndYear(date: string): string {
  return `${monthName(date)} ${date.slice(0, 4)}`;
}
