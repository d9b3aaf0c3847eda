import type { PainRegion, PainSide, Tissue } from '#lib/domain/vocabulary.ts';
import { tissuesOfRegion } from './tissues.ts';
import type { ClientView } from './types.ts';

export type RecentPain = { value: number; region: PainRegion; side: PainSide; date: string };

/** Highest joint or tendon score of the last days in a region of one of these tissues; `undefined` when none was given. */
export function recentPain(
  view: ClientView,
  tissues: readonly Tissue[],
  days: number,
): RecentPain | undefined {
  let highest: RecentPain | undefined;
  for (const { date, checkIns } of view.days.slice(-days)) {
    for (const { pain } of checkIns) {
      for (const { region, side, value, kind } of pain) {
        if (kind !== 'joint' || !tissuesOfRegion(region).some((tissue) => tissues.includes(tissue))) continue;
        if (!highest || isHigher({ value, region, side, date }, highest))
          highest = { value, region, side, date };
      }
    }
  }
  return highest;
}

/** A fixed choice between equal scores, so that the order of rows does not show. */
function isHigher(one: RecentPain, than: RecentPain): boolean {
  if (one.value !== than.value) return one.value > than.value;
  return `${one.date} ${one.region} ${one.side}` < `${than.date} ${than.region} ${than.side}`;
}
