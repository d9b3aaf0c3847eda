import type { HistoryCheckIn } from './history.ts';

/** A check-in that tells nothing yet: a rest day, to be filled with what is said or planned. */
export function emptyCheckIn(about: Pick<HistoryCheckIn, 'id' | 'date' | 'zone' | 'sentAt'>): HistoryCheckIn {
  return {
    ...about,
    kind: 'rest',
    session: null,
    effort: null,
    minutes: null,
    ground: null,
    sleepHours: null,
    nothingHurts: false,
    sets: [],
    pain: [],
    dangerSigns: [],
    words: '',
  };
}
