import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { oncePerCheckIns } from './once-per-view.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** One region and side over the check-ins that say something about it. */
export type PainSeries = {
  key: string;
  region: PainRegion;
  side: PainSide;
  /** Value told at intake; 0 when nothing was told. */
  intake: number;
  /** Oldest first. Check-ins that do not speak of the region are not in it: unknown is never zero. */
  points: PainPoint[];
};
export type PainPoint = {
  date: string;
  /** Highest of during, after and (on a day without training) today; undefined when none was given. */
  worst: number | undefined;
  morning: number | undefined;
  /** Highest of all moments. */
  highest: number;
  /** The highest value was called "the usual" by the client, and no value of the check-in new. */
  usual: boolean;
  /** A danger sign in the same check-in. */
  danger: boolean;
};

/** Joint and tendon pain by region and side, for every place named in a check-in or at intake, in order of key. */
export const painSeries: (view: ClientView) => readonly PainSeries[] = oncePerCheckIns(gather);

/** Usual pain on a date: median of the values 14-56 days before; under five of them the intake value, else 0. */
export function usualPain(series: PainSeries, of: 'worst' | 'morning', date: string, limits: Limits): number {
  const from = addDays(date, -limits['usualPain.toDays']);
  const to = addDays(date, -limits['usualPain.fromDays']);
  const values: number[] = [];
  for (const point of series.points) {
    const value = point[of];
    if (value !== undefined && point.date >= from && point.date <= to) values.push(value);
  }
  return values.length < limits['usualPain.atLeast'] ? series.intake : (median(values) ?? series.intake);
}

function gather(view: ClientView): PainSeries[] {
  const places = new Map<string, PainSeries>();
  const place = (region: PainRegion, side: PainSide) => {
    const key = `${region}:${side}`;
    const there = places.get(key);
    if (there) return there;
    const made: PainSeries = { key, region, side, intake: 0, points: [] };
    places.set(key, made);
    return made;
  };
  for (const told of view.history.client.intakePain) {
    const series = place(told.region, told.side);
    series.intake = Math.max(series.intake, told.value);
  }
  for (const { checkIns } of view.days) {
    for (const { pain } of checkIns) {
      for (const { kind, region, side } of pain) if (kind === 'joint') place(region, side);
    }
  }
  if (places.size === 0) return [];
  const all = [...places.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
  for (const { checkIns } of view.days) {
    for (const checkIn of checkIns) {
      for (const series of all) {
        const point = pointOf(checkIn, series);
        if (point) series.points.push(point);
      }
    }
  }
  return all;
}

function pointOf(checkIn: HistoryCheckIn, { region, side }: PainSeries): PainPoint | undefined {
  const { date } = checkIn;
  const danger = checkIn.dangerSigns.length > 0;
  let worst: number | undefined;
  let morning: number | undefined;
  let highest = -1;
  let usual = false;
  let isNew = false;
  for (const pain of checkIn.pain) {
    if (pain.kind !== 'joint' || pain.region !== region || pain.side !== side) continue;
    const { value } = pain;
    if (pain.moment === 'morning') morning = Math.max(morning ?? 0, value);
    else worst = Math.max(worst ?? 0, value);
    if (pain.usual === false) isNew = true;
    // Of several with the highest value all have to be "the usual", and none may be called new.
    if (value > highest) usual = pain.usual === true;
    else if (value === highest) usual &&= pain.usual === true;
    highest = Math.max(highest, value);
  }
  if (highest >= 0) return { date, worst, morning, highest, usual: usual && !isNew, danger };
  if (!checkIn.nothingHurts) return undefined;
  return { date, worst: 0, morning: 0, highest: 0, usual: false, danger };
}
