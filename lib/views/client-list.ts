import { localDateOf } from '#lib/domain/local-date.ts';
import type { Standing } from '#lib/domain/vocabulary.ts';
import { exactDate, saidDate } from './say-date.ts';
import { STANDING_LABELS } from './standing-labels.ts';

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
    last: row.lastDate === null ? 'none yet' : saidDate(row.lastDate, today),
    lastExact: row.lastDate === null ? '' : exactDate(row.lastDate),
    reasons: row.openReasons === 0 ? 'none' : String(row.openReasons),
  };
}
