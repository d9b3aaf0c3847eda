import { exactDate, saidDate } from '../say-date.ts';
import type { FilmFacts } from './film-lines.ts';

export type ClientFilm = {
  id: string;
  title: string;
  /** Whether there is something to look at. */
  isHere: boolean;
  waits: boolean;
  said: string;
  pinned: boolean;
};

/** A film of a client in one line for coaches. */
export function clientFilm(clip: FilmFacts, today: string): ClientFilm {
  const side = clip.side === 'both' ? '' : `, ${clip.side}`;
  return {
    id: clip.id,
    title: `${clip.rung}${side}, ${saidDate(clip.filmedOn, today)}`,
    isHere: clip.state === 'ready',
    waits: clip.state === 'ready' && clip.lookedAt === null,
    said: saidOf(clip),
    pinned: clip.pinned,
  };
}

function saidOf({ state, refusedWhy, seconds, lookedAt, lookedBy, keepUntil, pinned }: FilmFacts): string {
  if (state === 'checking') return 'being checked';
  if (state === 'refused') return `not taken: ${refusedWhy ?? ''}`;
  if (state === 'gone') return 'no longer kept';
  const length = seconds === null ? '' : `${Math.round(seconds)} s, `;
  if (lookedAt === null) return `${length}not looked at`;
  const kept = pinned ? ', kept with the record' : keepUntil ? `, kept until ${exactDate(keepUntil)}` : '';
  return `${length}looked at by ${lookedBy ?? 'a coach'}${kept}`;
}
