import type { HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { oncePerView } from './once-per-view.ts';
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
  /** Called "the usual" by the client, for the highest value. */
  usual: boolean;
  /** A danger sign in the same check-in. */
  danger: boolean;
};

/** Joint and tendon pain by region and side, for every place named in a check-in or at intake, in order of key. */
export const painSeries: (view: ClientView) => readonly PainSeries[] = oncePerView(gather);

/** Usual pain on a date: median of the values 14-56 days before; under five of them the intake value, else 0. */
export function usualPain(series: PainSeries, of: 'worst' | 'morning', date: string, limits: Limits): number {
  const from = addDays(date, -limits['usualPain.toDays']);
  const to = addDays(date, -limits['usualPain.fromDays']);
  const values = series.points
    .filter((point) => point.date >= from && point.date <= to)
    .flatMap((point) => point[of] ?? []);
  return values.length < limits['usualPain.atLeast'] ? series.intake : (median(values) ?? series.intake);
}

function gather(view: ClientView): PainSeries[] {
  const checkIns = view.days.flatMap((day) => day.checkIns);
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
  for (const checkIn of checkIns) {
    for (const pain of checkIn.pain) if (pain.kind === 'joint') place(pain.region, pain.side);
  }
  for (const series of places.values())
    series.points = checkIns.flatMap((checkIn) => pointOf(checkIn, series));
  return [...places.values()].sort((a, b) => (a.key < b.key ? -1 : 1));
}

function pointOf(checkIn: HistoryCheckIn, { region, side }: PainSeries): PainPoint[] {
  const said = checkIn.pain.filter(
    (pain) => pain.kind === 'joint' && pain.region === region && pain.side === side,
  );
  const danger = checkIn.dangerSigns.length > 0;
  if (said.length === 0) {
    if (!checkIn.nothingHurts) return [];
    return [{ date: checkIn.date, worst: 0, morning: 0, highest: 0, usual: false, danger }];
  }
  const highest = Math.max(...said.map((pain) => pain.value));
  return [
    {
      date: checkIn.date,
      worst: highestOf(said.filter((pain) => pain.moment !== 'morning')),
      morning: highestOf(said.filter((pain) => pain.moment === 'morning')),
      highest,
      usual: said.every((pain) => pain.value < highest || pain.usual === true),
      danger,
    },
  ];
}

function highestOf(pains: readonly HistoryPain[]): number | undefined {
  return pains.length === 0 ? undefined : Math.max(...pains.map((pain) => pain.value));
}
