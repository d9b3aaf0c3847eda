import type { Fault, Side } from '#lib/domain/vocabulary.ts';
import { isOfSide } from './set-result.ts';
import type { Standing } from './standings.ts';
import type { ClientView } from './types.ts';

/** What the newest film with a verdict showed; `date` is the day it was taken. */
export type FilmSeen = { verdict: 'clean' | 'not-clean'; date: string; faults: Fault[] };
type Shown = FilmSeen & { side: Side; at: string };

/**
 * What coaches saw of a rung on films taken from a date on; where each side is asked, the worse of both. Undefined without
 * a film on which it could be seen, or with one of one side only.
 */
export function seenOnFilm(view: ClientView, standing: Standing, from: string): FilmSeen | undefined {
  const shown = [...onFilms(view, standing.rung.id), ...inSets(view, standing.rung.id)]
    .filter(({ date, at }) => date >= from && date <= view.asOf.date && at <= view.asOf.instant)
    .sort((a, b) => (`${a.date} ${a.at}` < `${b.date} ${b.at}` ? 1 : -1));
  const sides: Side[] =
    standing.side === 'both' && standing.rung.eachSide ? ['left', 'right'] : [standing.side];
  const newest = sides.map((side) => shown.find((one) => isOfSide(one, side)));
  const missing = newest.includes(undefined);
  const known = newest.flatMap((one) => (one ? [one] : []));
  const worst = known.find(({ verdict }) => verdict === 'not-clean') ?? (missing ? undefined : known.at(-1));
  return worst && { verdict: worst.verdict, date: worst.date, faults: worst.faults };
}

function onFilms(view: ClientView, rungId: string): Shown[] {
  const shown: Shown[] = [];
  for (const film of view.history.films ?? []) {
    if (film.rungId !== rungId) continue;
    for (const { filmedOn, side, verdict, faults, at } of film.verdicts ?? [])
      if (verdict !== 'cannot-see') shown.push({ verdict, date: filmedOn, faults, side, at });
  }
  return shown;
}

/** A history of a period may carry the set and not the film. */
function inSets(view: ClientView, rungId: string): Shown[] {
  const shown: Shown[] = [];
  for (const { date, checkIns } of view.days) {
    for (const { sets } of checkIns) {
      for (const { rungId: id, side, onFilm } of sets) {
        if (id !== rungId || !onFilm || onFilm.verdict === 'cannot-see') continue;
        shown.push({ verdict: onFilm.verdict, date, faults: onFilm.faults, side, at: '' });
      }
    }
  }
  return shown;
}
