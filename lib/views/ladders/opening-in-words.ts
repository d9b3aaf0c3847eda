import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import { type LadderState, liveRungs, type OpeningState } from '#lib/planning/ladders/ladder-state.ts';

/** "20 cm, Lean and Roll or 5 × 5, Row; or at once on a wedge; under 18 only when the coach allows it". */
export function openingInWords(opening: OpeningState, names: ReadonlyMap<string, string>): string {
  const named = (id: string) => names.get(id) ?? 'a rung not in use';
  const needs = opening.needsAll.map((anyOf) => anyOf.map(named).join(' or ')).join(' and ');
  const supports = opening.orOnSupports.map((support) => SUPPORT_LABELS[support]).join(' or ');
  return [
    needs,
    supports && `${needs ? 'or ' : ''}at once ${supports}`,
    opening.under18CoachTick && 'under 18 only when the coach allows it',
  ]
    .filter(Boolean)
    .join('; ');
}

export type OpeningLine = { rung: string; asks: string; words: string };

/** The openings of a ladder as it is read: those of its rungs in use, easiest first. */
export function openingLines(ladder: LadderState, names: ReadonlyMap<string, string>): OpeningLine[] {
  return liveRungs(ladder).flatMap((rung, index) =>
    ladder.openings
      .filter((opening) => opening.opens === rung.id)
      .map((opening) => ({
        rung: `${index + 1} ${rung.name}`,
        asks: openingInWords(opening, names),
        words: opening.words,
      })),
  );
}
