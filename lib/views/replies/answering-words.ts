import type { AnsweringHours } from '#lib/domain/history.ts';
import { placeOfZone } from '../local-time.ts';

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** The weekdays in the order of the week, 1 Monday to 7 Sunday. */
export const WEEKDAYS: readonly { day: number; name: string }[] = DAYS.map((name, at) => ({
  day: at + 1,
  name,
}));

/** "Monday to Friday 09:00 to 17:00, Lisbon time"; without hours, that every hour counts. */
export function answeringInWords(answering: AnsweringHours | undefined): string {
  if (!answering || answering.days.length === 0) return 'round the clock, as no answering hours are set';
  const { days, from, to, zone } = answering;
  return `${daysInWords([...days].sort((a, b) => a - b))} ${from} to ${to}, ${placeOfZone(zone)} time`;
}

/** Three days and more running are told as a span. */
function daysInWords(days: readonly number[]): string {
  const runs: number[][] = [];
  for (const day of days) {
    const run = runs.at(-1);
    if (run && run.at(-1) === day - 1) run.push(day);
    else runs.push([day]);
  }
  return runs
    .flatMap((run) => (run.length > 2 ? [`${nameOf(run[0])} to ${nameOf(run.at(-1))}`] : run.map(nameOf)))
    .join(', ');
}

function nameOf(day: number | undefined): string {
  return DAYS[(day ?? 1) - 1] ?? '';
}
