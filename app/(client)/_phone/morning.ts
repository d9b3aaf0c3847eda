import { groupOfRegion } from '#lib/domain/pain-groups.ts';
import type { MorningPlace } from '#lib/views/phone-morning.ts';
import type { PlaceDraft } from './draft.ts';

/** The score of this morning for a place of yesterday, of the kind it was told as; null takes the answer back. */
export function withMorning(
  places: readonly PlaceDraft[],
  { region, side, kind }: MorningPlace,
  value: number | null,
): PlaceDraft[] {
  const isThis = (place: PlaceDraft) => place.region === region && place.side === side;
  const there = places.find(isThis);
  const { morning: _, ...scores } = there?.scores ?? {};
  const others = places.filter((place) => !isThis(place));
  if (value === null)
    return there && Object.keys(scores).length > 0 ? [...others, { ...there, scores }] : others;
  const place = there ?? { group: groupOfRegion(region), region, side, kind, usual: null };
  return [...others, { ...place, scores: { ...scores, morning: value } }];
}
