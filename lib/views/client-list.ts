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

/**
 * The clients whose name contains `text`, whatever the case or accents, by name; those who left come last. Done here
 * and not in the database, whose idea of upper and lower case depends on how it was set up.
 */
export function byName<Row extends { id: string; name: string; standing: Standing }>(
  rows: readonly Row[],
  text: string,
): Row[] {
  const wanted = folded(text.trim());
  return rows
    .filter((row) => folded(row.name).includes(wanted))
    .sort(
      (a, b) =>
        Number(a.standing === 'left') - Number(b.standing === 'left') ||
        a.name.localeCompare(b.name, 'en') ||
        (a.id < b.id ? -1 : 1),
    );
}

function folded(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase();
}
