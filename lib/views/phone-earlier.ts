import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { type PhoneWord, type WordOnDay, wordsOnDay } from './phone-words.ts';
import { firstSeen, type SeenBy } from './timeline-words.ts';

export type EarlierRow = {
  id: string;
  date: string;
  /** "Session A, 60 min, effort 7", "no training", "pain told". */
  about: string;
  /** "nothing hurt", "right elbow, inner 6 after"; empty: not told. */
  hurt: string;
  words: string;
  /** Instant it was deleted; null: it counts. */
  deletedAt: string | null;
  /** What coaches wrote on the day and on its sets. */
  said: PhoneWord[];
  /** The first look of a coach; null: nobody has looked. */
  seen: { by: string; at: string } | null;
};
type FromCoach = { words: readonly WordOnDay[]; seen: readonly SeenBy[] };
export type Deleted = { checkIn: HistoryCheckIn; deletedAt: string };

/** A client's own check-ins as the phone lists them, newest first, deleted ones in their place. */
export function earlierRows(
  checkIns: readonly HistoryCheckIn[],
  deleted: readonly Deleted[],
  from: FromCoach = { words: [], seen: [] },
): EarlierRow[] {
  const all = [...checkIns.map((checkIn) => ({ checkIn, deletedAt: null })), ...deleted];
  return all
    .sort((a, b) => (placeInTime(a.checkIn) < placeInTime(b.checkIn) ? 1 : -1))
    .map(({ checkIn, deletedAt }) => ({
      id: checkIn.id,
      date: checkIn.date,
      about: checkInInWords(checkIn),
      hurt: hurtInWords(checkIn),
      words: checkIn.words,
      deletedAt,
      said: wordsOnDay(checkIn.id, from.words),
      seen: firstSeen(checkIn, from.seen) ?? null,
    }));
}

/** What a check-in was, in one line. */
export function checkInInWords({ kind, session, minutes, effort, pain }: HistoryCheckIn): string {
  if (kind === 'rest') return pain.some(({ value }) => value > 0) ? 'Pain told' : 'No training';
  const parts = [
    session ? `Session ${session}` : 'Training',
    minutes === null ? '' : `${minutes} min`,
    effort === null ? '' : `effort ${effort}`,
  ];
  return parts.filter(Boolean).join(', ');
}

function hurtInWords({ nothingHurts, pain }: HistoryCheckIn): string {
  if (pain.length === 0) return nothingHurts ? 'nothing hurt' : '';
  return pain
    .map(({ region, side, value, moment }) => `${placeInWords(region, side)} ${value} ${MOMENTS[moment]}`)
    .join('; ');
}

const MOMENTS = { during: 'while training', after: 'after', morning: 'in the morning', today: 'that day' };

function placeInTime({ date, sentAt, id }: HistoryCheckIn): string {
  return `${date} ${sentAt} ${id}`;
}
