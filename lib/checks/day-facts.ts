import type { HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import type { TissueLoad } from './exposure.ts';
import { type AlikeSets, workOf } from './rung-work.ts';
import { isOnSoftGround } from './soft-ground.ts';

export type DayFacts = {
  trained: boolean;
  /** AU, all sessions of the day together; `undefined` when one session's effort or minutes are missing. */
  sessionLoad: number | undefined;
  /** Body-weight seconds. */
  tissueLoad: TissueLoad;
  /** Highest joint or tendon score of the day, any moment; null when none was given. "Nothing hurts" is 0. */
  worstPain: number | null;
  soft: boolean;
};

/** What the check-ins of one day add up to. An empty list is a day with nothing known. */
export function dayFacts(
  checkIns: readonly HistoryCheckIn[],
  rungs: ReadonlyMap<string, HistoryRung>,
  bodyMassKg: number | null = null,
): DayFacts {
  const { alike } = workOf([{ checkIns }], { rungs, bodyMassKg });
  return {
    trained: checkIns.some((checkIn) => checkIn.kind === 'training'),
    sessionLoad: sessionLoadOf(checkIns),
    tissueLoad: tissueLoadOf(alike),
    worstPain: worstPainOf(checkIns),
    soft: checkIns.some(isOnSoftGround),
  };
}

/**
 * Session load of a day in arbitrary units: effort (0-10) x minutes (Foster 2001), sessions added up, rest 0.
 * `undefined` without a check-in, or when one session's effort or minutes are missing.
 */
export function sessionLoadOf(checkIns: readonly HistoryCheckIn[]): number | undefined {
  if (checkIns.length === 0) return undefined;
  let total = 0;
  for (const { kind, effort, minutes } of checkIns) {
    if (kind === 'rest') continue;
    if (effort === null || minutes === null) return undefined;
    total += effort * minutes;
  }
  return total;
}

function tissueLoadOf(alike: readonly AlikeSets[]): TissueLoad {
  const load: TissueLoad = {};
  for (const { seconds, perSecond } of alike) {
    for (const { key, factor } of perSecond) load[key] = (load[key] ?? 0) + seconds * factor;
  }
  return load;
}

function worstPainOf(checkIns: readonly HistoryCheckIn[]): number | null {
  let worst: number | null = null;
  for (const { nothingHurts, pain } of checkIns) {
    if (nothingHurts) worst = Math.max(worst ?? 0, 0);
    for (const { kind, value } of pain) if (kind === 'joint') worst = Math.max(worst ?? 0, value);
  }
  return worst;
}
