import { localDateOf } from '#lib/domain/local-date.ts';
import { clockTime } from './local-time.ts';
import { datedDay } from './say-date.ts';
import { type NamedSet, setInWords } from './set-words.ts';

/** Words of a coach on a check-in, as the database holds them. */
export type WordOnCheckIn = {
  id: string;
  checkInId: string;
  set: NamedSet | null;
  text: string;
  by: string;
  at: Date;
  readAt: Date | null;
};
export type TimelineWord = {
  id: string;
  /** "Tuck planche left, set 2"; empty: the day. */
  about: string;
  text: string;
  /** "Ana, Tue 24 Nov 08:10; read Tue 24 Nov 09:00". */
  who: string;
};
/** A look of a coach: at one check-in, or (`checkInId: null`) at the client, so at all that had been sent by then. */
export type SeenBy = { at: string; by: string; checkInId?: string | null };

type Where = { zone: string; today: string };

/** A coach's words on one check-in as the coach reads them back, on the client's clock. */
export function wordsOf(checkInId: string, words: readonly WordOnCheckIn[], where: Where): TimelineWord[] {
  return words
    .filter((word) => word.checkInId === checkInId)
    .map(({ id, set, text, by, at, readAt }) => ({
      id,
      about: set ? setInWords(set) : '',
      text,
      who: `${by}, ${moment(at, where)}; ${readAt ? `read ${moment(readAt, where)}` : 'not read yet'}`,
    }));
}

/** The first look at a check-in; undefined: nobody has looked. Instants are ISO 8601 in UTC. */
export function firstSeen(
  checkIn: { id: string; sentAt: string },
  marks: readonly SeenBy[],
): SeenBy | undefined {
  return marks
    .filter((mark) => (mark.checkInId ? mark.checkInId === checkIn.id : mark.at >= checkIn.sentAt))
    .sort((a, b) => (a.at < b.at ? -1 : 1))[0];
}

/** "seen by Ana, Tue 24 Nov 08:10", or that nobody has looked. */
export function seenInWords(mark: SeenBy | undefined, where: Where): string {
  return mark ? `seen by ${mark.by}, ${moment(new Date(mark.at), where)}` : 'not seen yet';
}

function moment(at: Date, { zone, today }: Where): string {
  return `${datedDay(localDateOf(at, zone), today)} ${clockTime(at, zone)}`;
}
