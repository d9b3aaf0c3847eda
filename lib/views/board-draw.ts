import { addDays } from '#lib/domain/local-date.ts';
import { sayDate } from './board-row.ts';
import type { BoardRow, Contact, DrawnRow } from './board-types.ts';
import { nextCheckIn } from './next-check-in.ts';
import { exactDate, saidDate } from './say-date.ts';
import { type StripDays, toStrip } from './strip.ts';
import { type StripPaths, stripPaths } from './strip-paths.ts';

/** A row with its strip, last check-in and "seen". Without days the strip is all unknown. */
export function drawRow(
  row: BoardRow,
  of: { contact: Contact | undefined; days: StripDays | undefined; today: string; lastNight: string },
): DrawnRow {
  const { today } = of;
  const days = of.days ?? { days: [], absences: [], placements: [] };
  const dates = days.days.filter((day) => day.state !== 'unknown').map((day) => day.date);
  const contact = of.contact ?? { lastCheckIn: null, seen: null };
  return {
    ...row,
    checkedIn: checkedIn(contact.lastCheckIn, today),
    seen: seenWords(contact, today),
    nextCheckIn: sayDate(nextCheckIn(dates, today), today),
    strip: toStrip(days, { lastNight: of.lastNight, ladderId: row.ladderId, earned: row.earned }),
  };
}

/** "checked in Wed 19:40", on the client's clock. */
export function checkedIn(last: Contact['lastCheckIn'], today: string): DrawnRow['checkedIn'] {
  if (!last) return { said: 'no check-in yet', exact: 'No check-in has come from this client' };
  return {
    said: `checked in ${saidDate(last.date, today)}${last.date > addDays(today, -7) ? ` ${last.time}` : ''}`,
    exact: `Last check-in sent ${exactDate(last.date)}, ${last.time} on the client's clock`,
  };
}

function seenWords({ seen, lastCheckIn }: Contact, today: string): string | null {
  if (!seen) return null;
  const at = `${seen.date} ${seen.time}`;
  if (lastCheckIn && at < `${lastCheckIn.date} ${lastCheckIn.time}`) return null;
  return `seen ${saidDate(seen.date, today)} ${seen.time}`;
}

/** A row as it travels to the page: the strip as lines to draw. */
export type ShownRow = Omit<
  DrawnRow,
  'strip' | 'points' | 'waitingSince' | 'kinds' | 'ladderId' | 'earned' | 'print'
> & { strip: { paths: StripPaths; spoken: string } };

export function toShown(row: DrawnRow): ShownRow {
  // What only orders the rows stays here: every row is sent twice, as HTML and as what the page acts on.
  const { strip, points, waitingSince, kinds, ladderId, earned, print, ...shown } = row;
  return { ...shown, strip: { paths: stripPaths(strip), spoken: strip.spoken } };
}
