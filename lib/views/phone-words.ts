import { shortDate } from './phone-dates.ts';
import { setInWords } from './set-words.ts';
import type { WordOnCheckIn } from './timeline-words.ts';

/** The same with its day, for where it stands alone. */
export type WordOnDay = WordOnCheckIn & { date: string; session: string | null };
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
