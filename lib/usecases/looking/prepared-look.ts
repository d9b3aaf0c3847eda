import type { LookAct } from '#lib/schemas/looking.ts';
import { filmSecond } from '#lib/views/looking/film-second.ts';
import { verdictInWords } from '#lib/views/looking/verdict-words.ts';
import { exactDate } from '#lib/views/say-date.ts';

/** `set`: which of its drill and side the set is, counted from 1. */
type Film = { rung: string; filmedOn: string; set: number };
type Look = { title: string; about: string | null; does: string[]; words: string | null };

/** What an assistant prepared on a film, as whoever approves it reads it. */
export function preparedLook(body: LookAct, film: Film | undefined): Look {
  const about = film ? `${film.rung}, film of ${exactDate(film.filmedOn)}` : 'a film that is no longer there';
  if (body.act === 'words')
    return { title: 'Words on a film', about, does: [`At ${filmSecond(body.atSeconds)}.`], words: body.text };
  if (body.act === 'looked')
    return { title: 'A film looked at', about, does: ['It waits no more.'], words: null };
  const { set } = body;
  const side = set.side === 'both' ? '' : `${set.side}, `;
  const which = set.told ? `${side}set ${film?.set ?? ''}` : `${side}a set told in no check-in`;
  return { title: 'A set on film', about, does: [`${which}: ${verdictInWords(body)}.`], words: null };
}
