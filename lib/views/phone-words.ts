import type { Side } from '#lib/domain/vocabulary.ts';
import { shortDate } from './phone-dates.ts';
import { setInWords } from './set-words.ts';

/** Words of a coach on a check-in, as the database holds them. */
export type WordOnDay = {
  id: string;
  checkInId: string;
  date: string;
  session: string | null;
  set: { rung: string; side: Side; number: number } | null;
  text: string;
  by: string;
  at: Date;
  readAt: Date | null;
};
export type PhoneWord = {
  id: string;
  /** "Tuck planche left, set 2"; empty: the day. */
  about: string;
  text: string;
  by: string;
  at: Date;
  read: boolean;
};

/** The words on one check-in, those on the day first, in the order in which they were written. */
export function wordsOnDay(checkInId: string, words: readonly WordOnDay[]): PhoneWord[] {
  return words
    .filter((word) => word.checkInId === checkInId)
    .map(({ id, set, text, by, at, readAt }) => ({
      id,
      about: set ? setInWords(set) : '',
      text,
      by,
      at,
      read: readAt !== null,
    }))
    .sort((a, b) => Number(a.about !== '') - Number(b.about !== ''));
}

/** What words are about where they stand alone: "Tue 24 Nov, session A, Tuck planche left, set 2". */
export function wordsAbout(word: Pick<WordOnDay, 'date' | 'session' | 'set'>): string {
  return [
    shortDate(word.date),
    word.session ? `session ${word.session}` : '',
    word.set ? setInWords(word.set) : '',
  ]
    .filter(Boolean)
    .join(', ');
}
