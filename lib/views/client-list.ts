import { daysBetween, localDateOf } from '#lib/domain/local-date.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { dateInWords } from './date-in-words.ts';

export const STANDING_LABELS: Record<Standing, string> = {
  invited: 'invited',
  starting: 'starting',
  'in-training': 'in training',
  paused: 'paused',
  ending: 'ending',
  left: 'left',
  back: 'back',
};

type Listed = {
  id: string;
  name: string;
  standing: Standing;
  zone: string;
  lastDate: string | null;
  openReasons: number;
};

/** One line of the list of clients, in words. `now` decides what "today" is, in the client's zone. */
export function clientListRow(row: Listed, now: Date) {
  const today = localDateOf(now, row.zone);
  return {
    id: row.id,
    name: row.name,
    standing: STANDING_LABELS[row.standing],
    last: row.lastDate === null ? 'none yet' : dateInWords(row.lastDate, today),
    lastExact: row.lastDate === null ? '' : `${row.lastDate}, ${daysBetween(row.lastDate, today)} days ago`,
    reasons: row.openReasons === 0 ? 'none' : String(row.openReasons),
  };
}
