import { isDone, setSeconds } from '#lib/checks/exposure.ts';
import type { ClientHistory, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import type { LoadDay } from '#lib/domain/record.ts';
import { type PainRegion, type PainSide, TISSUES, type Tissue } from '#lib/domain/vocabulary.ts';

export type Week = { from: string; to: string };
export type LoadWeek = Week & { knownDays: number; trainedDays: number; sessionLoadAu: number | null };
/** Work on one tissue and side: sets and seconds of the rungs that load it, and its body-weight seconds. */
export type TissueWeek = Week & {
  tissue: Tissue;
  side: 'left' | 'right';
  sets: number;
  hardSets: number;
  seconds: number;
  bodyWeightSeconds: number;
};
/** Joint or tendon scores of one place. `null`: no score of that moment was given. */
export type PainWeek = Week & {
  region: PainRegion;
  side: PainSide;
  daysSpoken: number;
  worst: number | null;
  morning: number | null;
};
export type Weeks = { load: LoadWeek[]; tissues: TissueWeek[]; pain: PainWeek[] };

const DAYS = 7;
/** From this weight (0-1) on a set counts as a hard position for the tissue. Own choice. */
const HARD = 0.8;

/**
 * The record in weeks: blocks of 7 days counted back from `to`, the oldest first, from the block of the first check-in on.
 * An unknown day adds nothing and is counted as unknown; a week without a known day has no load, not zero.
 */
export function weeksOf(history: ClientHistory, days: readonly LoadDay[], to: string): Weeks {
  const first = days[0]?.date;
  if (first === undefined || first > to) return { load: [], tissues: [], pain: [] };
  const count = Math.floor(daysBetween(first, to) / DAYS) + 1;
  const weeks = Array.from({ length: count }, (_, at): Week => {
    const last = addDays(to, -DAYS * (count - 1 - at));
    return { from: addDays(last, 1 - DAYS), to: last };
  });
  const at = (date: string) => count - 1 - Math.floor(daysBetween(date, to) / DAYS);
  const daysOf = weeks.map((): LoadDay[] => []);
  for (const day of days) daysOf[at(day.date)]?.push(day);
  return {
    load: weeks.map((week, index) => loadWeek(week, daysOf[index] ?? [])),
    tissues: tissueWeeks(history, days, weeks, at),
    pain: painWeeks(history, weeks, at),
  };
}

function loadWeek(week: Week, days: readonly LoadDay[]): LoadWeek {
  const known = days.filter((day) => day.sessionLoadAu !== null);
  return {
    ...week,
    knownDays: known.length,
    trainedDays: days.filter((day) => day.state === 'trained').length,
    sessionLoadAu:
      known.length === 0 ? null : tenths(known.reduce((sum, day) => sum + (day.sessionLoadAu ?? 0), 0)),
  };
}

function tissueWeeks(
  history: ClientHistory,
  days: readonly LoadDay[],
  weeks: readonly Week[],
  at: (date: string) => number,
): TissueWeek[] {
  const rungs = new Map(history.rungs.map((rung) => [rung.id, rung]));
  const made = new Map<string, TissueWeek>();
  const cell = (index: number, tissue: Tissue, side: 'left' | 'right') => {
    const week = weeks[index];
    if (!week) return undefined;
    const key = `${String(index).padStart(5, '0')} ${tissue} ${side}`;
    const there = made.get(key) ?? {
      ...week,
      tissue,
      side,
      sets: 0,
      hardSets: 0,
      seconds: 0,
      bodyWeightSeconds: 0,
    };
    made.set(key, there);
    return there;
  };
  for (const { date, sets } of history.checkIns) {
    for (const set of sets) {
      const rung = rungs.get(set.rungId);
      if (!rung || !isDone(set)) continue;
      for (const [tissue, weight] of weightsOf(rung)) {
        for (const side of sidesOf(set, rung)) {
          const week = cell(at(date), tissue, side);
          if (!week) continue;
          week.sets += 1;
          if (weight >= HARD) week.hardSets += 1;
          week.seconds = tenths(week.seconds + setSeconds(set, rung));
        }
      }
    }
  }
  for (const { date, tissueLoads } of days) {
    for (const tissue of TISSUES) {
      for (const side of ['left', 'right'] as const) {
        const load = tissueLoads[`${tissue}:${side}`] ?? 0;
        const week = load > 0 ? cell(at(date), tissue, side) : undefined;
        if (week) week.bodyWeightSeconds = tenths(week.bodyWeightSeconds + load);
      }
    }
  }
  return [...made].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, week]) => week);
}

function weightsOf(rung: HistoryRung): [Tissue, number][] {
  return TISSUES.flatMap((tissue): [Tissue, number][] => {
    const weight = rung.weights[tissue] ?? 0;
    return weight > 0 ? [[tissue, weight]] : [];
  });
}

function sidesOf(set: HistorySet, rung: HistoryRung): ('left' | 'right')[] {
  return set.side === 'both' || rung.eachIsLeg ? ['left', 'right'] : [set.side];
}

function painWeeks(history: ClientHistory, weeks: readonly Week[], at: (date: string) => number): PainWeek[] {
  const made = new Map<string, PainWeek & { dates: Set<string> }>();
  for (const { date, pain } of history.checkIns) {
    for (const { kind, region, side, moment, value } of pain) {
      const index = at(date);
      const week = weeks[index];
      if (kind !== 'joint' || !week) continue;
      const key = `${String(index).padStart(5, '0')} ${region} ${side}`;
      const there = made.get(key) ?? {
        ...week,
        region,
        side,
        daysSpoken: 0,
        worst: null,
        morning: null,
        dates: new Set(),
      };
      made.set(key, there);
      there.dates.add(date);
      if (moment === 'morning') there.morning = Math.max(there.morning ?? 0, value);
      else there.worst = Math.max(there.worst ?? 0, value);
    }
  }
  return [...made]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, { dates, ...week }]) => ({ ...week, daysSpoken: dates.size }));
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10;
}
