import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PainKind, PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';

/** A place that hurt yesterday; `value`: its highest score then, 0-10. */
export type MorningPlace = { region: PainRegion; side: PainSide; kind: PainKind; value: number };
/** Why this morning is asked about: pain was told yesterday, or the training was far above the usual. */
export type MorningQuestion = { date: string; why: 'pain' | 'load'; places: MorningPlace[] };

/** Own choices: a session half again above the usual one of four weeks, known from four trainings or more. */
const HIGH_SHARE = 1.5;
const USUAL_DAYS = 28;
const LEAST_DAYS = 4;

/**
 * Whether the client is asked how it is this morning: on the day after a training with pain of 1 or more, or with a load
 * (effort x minutes, arbitrary units) far above the usual. Null: not trained yesterday, nothing of the kind, or told
 * today already. `recent`: effective check-ins of the last four weeks and more; days without a known load count for
 * nothing.
 */
export function morningQuestion(recent: readonly HistoryCheckIn[], today: string): MorningQuestion | null {
  const date = addDays(today, -1);
  const trained = recent.filter((checkIn) => checkIn.kind === 'training');
  const yesterday = trained.filter((checkIn) => checkIn.date === date);
  if (yesterday.length === 0 || recent.some((checkIn) => checkIn.date === today && isTold(checkIn)))
    return null;
  const places = placesOf(yesterday);
  if (places.length > 0) return { date, why: 'pain', places };
  return isHigh(trained, date) ? { date, why: 'load', places } : null;
}

function isTold({ nothingHurts, pain }: HistoryCheckIn): boolean {
  return nothingHurts || pain.some(({ moment }) => moment === 'morning');
}

function placesOf(checkIns: readonly HistoryCheckIn[]): MorningPlace[] {
  const places = new Map<string, MorningPlace>();
  for (const { region, side, kind, value } of checkIns.flatMap(({ pain }) => pain)) {
    const key = `${region} ${side}`;
    if (value > (places.get(key)?.value ?? 0)) places.set(key, { region, side, kind, value });
  }
  return [...places.values()].sort((a, b) => b.value - a.value);
}

function isHigh(trained: readonly HistoryCheckIn[], date: string): boolean {
  const loads = new Map<string, number>();
  for (const { date: day, effort, minutes } of trained) {
    if (day > date || day < addDays(date, -USUAL_DAYS) || effort === null || minutes === null) continue;
    loads.set(day, (loads.get(day) ?? 0) + effort * minutes);
  }
  const load = loads.get(date);
  loads.delete(date);
  const usual = median([...loads.values()]);
  if (load === undefined || usual === undefined || loads.size < LEAST_DAYS) return false;
  return load >= HIGH_SHARE * usual;
}
