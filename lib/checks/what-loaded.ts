import type { Fact } from '#lib/domain/finding.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { rounded } from './in-numbers.ts';
import { loadsOf } from './load-series.ts';
import type { Limits } from './thresholds.ts';
import { tissuesOfRegion } from './tissues.ts';
import type { ClientView, TissueSide } from './types.ts';
import { viewWork } from './view-work.ts';
import { plainNumber } from './words.ts';

export type Loaded = {
  /** Drills by load on the place, largest first, in body-weight seconds. */
  drills: { name: string; load: number }[];
  total: number;
  /** Median of the four fortnights before, where they are in the history. */
  usual: number | undefined;
};

const NAMED = 3;
const FORTNIGHTS = 4;

/** What loaded the tissues of a region in the 14 days up to a date, largest first, against the fortnights before. */
export function whatLoaded(
  view: ClientView,
  place: { region: PainRegion; side: PainSide },
  until: string,
  limits: Limits,
): Loaded {
  const length = limits['painCauses.days'];
  const end = view.indexOf(until) + 1;
  const keys = keysOf(place.region, place.side);
  const sums = new Map<string, number>();
  for (const { at, rung, seconds, perSecond } of viewWork(view).alike) {
    if (at < end - length || at >= end) continue;
    let sum = 0;
    for (const { key, factor } of perSecond) if (keys.includes(key)) sum += seconds * factor;
    if (sum > 0) sums.set(rung.name, (sums.get(rung.name) ?? 0) + sum);
  }
  const drills = [...sums.entries()]
    .map(([name, load]) => ({ name, load }))
    .sort((a, b) => b.load - a.load || (a.name < b.name ? -1 : 1))
    .slice(0, NAMED);
  return {
    drills,
    total: total(view, end, length, keys),
    usual: usual(view, end - length, length, keys),
  };
}

/** The facts of a working that name what loaded the place. */
export function loadedFacts({ drills, total, usual }: Loaded): Fact[] {
  const facts: Fact[] = drills.map(({ name, load }) => ({
    name,
    value: rounded(load),
    unit: 'BW s in 14 days',
  }));
  facts.push({ name: 'all drills on this tissue', value: rounded(total), unit: 'BW s in 14 days' });
  if (usual !== undefined) facts.push({ name: 'usual fortnight', value: rounded(usual), unit: 'BW s' });
  return facts;
}

/** " Loaded most by Toe pull in the 14 days before, 1.7 x usual."; empty when nothing loads the place. */
export function loadedInWords({ drills, total, usual }: Loaded): string {
  const first = drills[0];
  if (!first) return '';
  const against =
    usual !== undefined && usual > 0 ? `, ${plainNumber(total / usual)} x the usual fortnight` : '';
  return ` Loaded most by ${first.name} in the 14 days before${against}.`;
}

function keysOf(region: PainRegion, side: PainSide): TissueSide[] {
  const sides = side === 'middle' ? (['left', 'right'] as const) : ([side] as const);
  return tissuesOfRegion(region).flatMap((tissue) => sides.map((one): TissueSide => `${tissue}:${one}`));
}

function total(view: ClientView, end: number, length: number, keys: readonly TissueSide[]): number {
  const { tissues } = loadsOf(view);
  let sum = 0;
  for (let index = Math.max(0, end - length); index < end; index += 1) {
    for (const key of keys) sum += tissues.get(key)?.values[index] ?? 0;
  }
  return sum;
}

function usual(
  view: ClientView,
  end: number,
  length: number,
  keys: readonly TissueSide[],
): number | undefined {
  const totals: number[] = [];
  for (let at = end; at - length >= 0 && totals.length < FORTNIGHTS; at -= length) {
    totals.push(total(view, at, length, keys));
  }
  if (totals.length < FORTNIGHTS) return undefined;
  const [, low = 0, high = 0] = totals.sort((a, b) => a - b);
  return (low + high) / 2;
}
