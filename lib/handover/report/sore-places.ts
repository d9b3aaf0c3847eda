import { placeInWords } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PainMoment, PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import type { ReportInput } from './input.ts';

/** Highest score of each moment of a day; null: none was given. */
export type Scores = Record<PainMoment, number | null>;
/** One place that was ever sore in the period: joint or tendon scores only. */
export type SorePlace = {
  region: PainRegion;
  side: PainSide;
  name: string;
  /** First day of a score of 1 or more. */
  since: string;
  last: { date: string; value: number };
  highest: { date: string; value: number };
  /** Highest of the last 28 days; null: not spoken of. */
  recent: number | null;
  /** Days with a score of the place, and those on which nothing hurt. */
  days: Map<string, Scores>;
};

const RECENT_DAYS = 28;

/** Sore places, those sore last and highest first. */
export function sorePlaces({ history, period }: Pick<ReportInput, 'history' | 'period'>): SorePlace[] {
  const places = new Map<string, SorePlace>();
  const inPeriod = history.checkIns.filter((one) => one.date >= period.from && one.date <= period.to);
  for (const { date, pain, nothingHurts } of [...inPeriod].sort((a, b) =>
    a.date < b.date ? -1 : a.date > b.date ? 1 : 0,
  )) {
    if (nothingHurts) for (const place of places.values()) addCalm(place, date, period.to);
    for (const { kind, region, side, moment, value } of pain) {
      if (kind !== 'joint') continue;
      const key = `${region}:${side}`;
      const there = places.get(key);
      if (!there && value === 0) continue;
      const place = there ?? {
        region,
        side,
        name: placeInWords(region, side),
        since: date,
        last: { date, value },
        highest: { date, value },
        recent: null,
        days: new Map(),
      };
      places.set(key, place);
      const scores: Scores = place.days.get(date) ?? {
        during: null,
        after: null,
        morning: null,
        today: null,
      };
      scores[moment] = Math.max(scores[moment] ?? 0, value);
      place.days.set(date, scores);
      const worstOfDay = highestOf(scores);
      place.last = { date, value: worstOfDay };
      if (worstOfDay > place.highest.value) place.highest = { date, value: worstOfDay };
      if (date > addDays(period.to, -RECENT_DAYS)) place.recent = Math.max(place.recent ?? 0, worstOfDay);
    }
  }
  return [...places.values()].sort(
    (a, b) =>
      (b.recent ?? -1) - (a.recent ?? -1) || b.highest.value - a.highest.value || (a.name < b.name ? -1 : 1),
  );
}

const NO_SCORES = (): Scores => ({ during: null, after: null, morning: null, today: null });

/** "Nothing hurts" says 0 of every place that was ever sore. */
function addCalm(place: SorePlace, date: string, to: string): void {
  if (!place.days.has(date)) {
    place.days.set(date, NO_SCORES());
    place.last = { date, value: 0 };
  }
  if (date > addDays(to, -RECENT_DAYS)) place.recent = Math.max(place.recent ?? 0, 0);
}

/** Days with a score of the place's own. */
export function scoredDaysOf(place: SorePlace, from: string): number {
  return [...place.days].filter(
    ([date, scores]) => date >= from && Object.values(scores).some((one) => one !== null),
  ).length;
}

/** The highest score of a day, any moment. "Nothing hurts" is 0. */
export function highestOf(scores: Readonly<Scores>): number {
  return Math.max(0, ...Object.values(scores).map((score) => score ?? 0));
}
