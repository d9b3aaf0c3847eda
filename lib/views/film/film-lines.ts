import { asSentence } from '#lib/domain/labels.ts';
import type { ClipState, Side } from '#lib/domain/vocabulary.ts';
import { dayAsSaid, shortDate } from '../phone-dates.ts';

/** What both sides are told of a film from. */
export type FilmFacts = {
  id: string;
  rung: string;
  side: Side;
  filmedOn: string;
  state: ClipState;
  refusedWhy: string | null;
  seconds: number | null;
  lookedAt: Date | null;
  lookedBy: string | null;
  keepUntil: string | null;
  pinned: boolean;
};

/** One own film as its line on the phone. */
export type FilmLine = {
  id: string;
  title: string;
  day: string;
  state: ClipState;
  /** What became of it, in a sentence. */
  said: string;
  words: { text: string; by: string }[];
};

export function filmLine(clip: FilmFacts & { words: FilmLine['words'] }, today: string): FilmLine {
  const side = clip.side === 'both' ? '' : `, ${clip.side}`;
  return {
    id: clip.id,
    title: `${clip.rung}${side}`,
    day: asSentence(dayAsSaid(clip.filmedOn, today)),
    state: clip.state,
    said: saidOf(clip),
    words: [...clip.words],
  };
}

function saidOf({ state, refusedWhy, seconds, lookedAt, lookedBy, keepUntil, pinned }: FilmFacts): string {
  if (state === 'checking') return 'It is here, and is being looked through. That takes a minute or two.';
  if (state === 'refused') return `Not taken. ${refusedWhy ?? ''}`.trim();
  if (state === 'gone') return 'No longer kept. What was said of it stays.';
  const length = seconds === null ? '' : `${Math.round(seconds)} s. `;
  if (lookedAt === null) return `${length}Waits to be looked at.`;
  const kept = pinned ? '' : keepUntil ? ` Kept until ${shortDate(keepUntil)}.` : '';
  return `${length}${lookedBy ?? 'Your coach'} has looked at it.${kept}`;
}
