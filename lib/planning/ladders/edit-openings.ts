import type { Edited } from './ladder-edit.ts';
import type { LadderState, OpeningState } from './ladder-state.ts';

/**
 * The ladder with other openings. Refused, with the field: one that opens no rung of this ladder; one that asks for the rung
 * it opens or a harder one of the same ladder; the same rung twice. Whether rungs of other ladders are there, and whether
 * openings of several ladders ask for each other in a circle, is known only beside those ladders: see `neverOpen`.
 */
export function editedOpenings(state: LadderState, openings: OpeningState[]): Edited {
  const wrong: Record<string, string> = {};
  const places = new Map(state.rungs.map((rung, index) => [rung.id, index]));
  const known = (id: string) => state.openings.some((opening) => opening.opens === id);
  for (const [at, { opens, needsAll }] of openings.entries()) {
    const place = places.get(opens);
    const rung = state.rungs.find((one) => one.id === opens);
    if (!rung || place === undefined) {
      if (!known(opens))
        wrong[`openings.${at}.opens`] = 'is not a rung of this ladder: choose one from the list';
    } else if (rung.retired && !known(opens))
      wrong[`openings.${at}.opens`] = 'is retired: choose a rung in use, or put it back first';
    for (const [need, anyOf] of needsAll.entries())
      for (const [choice, id] of anyOf.entries()) {
        const path = `openings.${at}.needsAll.${need}.${choice}`;
        if (place !== undefined && (places.get(id) ?? -1) >= place)
          wrong[path] =
            'stands at or after what it would open: choose an easier rung, or one of another ladder';
        else if (anyOf.indexOf(id) < choice) wrong[path] = 'is named already: choose another or take it away';
      }
  }
  return Object.keys(wrong).length > 0 ? { wrong } : { state: { ...state, openings } };
}
