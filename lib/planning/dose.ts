import type { HistoryRung } from '#lib/domain/history.ts';
import { median } from '#lib/stats/median.ts';

export type Dose = { sets: number; target: number };
export type DoseProposal = Dose & {
  /** In one plain sentence. */
  why: string;
  source: typeof PRACTICE;
};
/** Clean results of one training day on a rung and side, in the rung's measure. `whole`: every planned set was clean. */
export type DayResult = { values: readonly number[]; whole: boolean };

export const PRACTICE = 'common practice, no source';
const LAST_DAYS = 3;
/** Strength: five clean reps, four to five sets. */
const REPS = 5;
const FEW_SETS = 4;
const MANY_SETS = 5;
/** A harder hold is started once the easier one is this long, seconds, and at this length. */
const PYRAMID_FROM = 12;
const PYRAMID_START = 6;
const PYRAMID_EASIER_SETS = 3;
/** Balance, from the best clean holds of late: tries first, then 2-3 s, 5-10 s, then 20-30 s. */
const BALANCE: readonly { from: number; dose: Dose; why: string }[] = [
  { from: 20, dose: { sets: 3, target: 30 }, why: 'holds of 20 s are there: 20-30 s' },
  { from: 10, dose: { sets: 4, target: 20 }, why: 'holds of 10 s are there: on the way to 20-30 s' },
  { from: 5, dose: { sets: 5, target: 10 }, why: 'holds of 5 s are there: 5-10 s' },
  { from: 2, dose: { sets: 5, target: 5 }, why: 'holds of 2-3 s are there: 5 s' },
  { from: 0, dose: { sets: 5, target: 3 }, why: 'tries first, then holds of 2-3 s' },
];

/**
 * A dose for a rung from its last results, newest first: never over the pass mark in one set. Without results the
 * first dose of a new rung. Always common practice, without a source.
 */
export function proposeDose(rung: HistoryRung, results: readonly DayResult[]): DoseProposal {
  const recent = results.slice(0, LAST_DAYS);
  const best = median(recent.flatMap(({ values }) => (values.length > 0 ? [Math.max(...values)] : [])));
  const proposed = byMeasure(rung, best, recent);
  return { ...capped(proposed, rung), why: proposed.why, source: PRACTICE };
}

/** Two rungs of one ladder in a session, once the easier is held for 12-15 s; undefined before that, and for other measures. */
export function proposePyramid(
  easier: HistoryRung,
  harder: HistoryRung,
  results: readonly DayResult[],
): { easier: DoseProposal; harder: DoseProposal } | undefined {
  if (easier.measure !== 'hold' || harder.measure !== 'hold') return undefined;
  const held = median(results.slice(0, LAST_DAYS).flatMap(({ values }) => values));
  if (held === undefined || held < PYRAMID_FROM) return undefined;
  const why = `the easier one is held for ${Math.round(held)} s: a pyramid of both`;
  const target = Math.min(easier.pass.target, Math.round(held));
  return {
    easier: { sets: PYRAMID_EASIER_SETS, target, why, source: PRACTICE },
    harder: {
      ...capped({ sets: FEW_SETS, target: PYRAMID_START }, harder),
      why: `${why}, the harder from ${PYRAMID_START} s`,
      source: PRACTICE,
    },
  };
}

function byMeasure(
  rung: HistoryRung,
  best: number | undefined,
  recent: readonly DayResult[],
): Dose & { why: string } {
  const { pass, measure } = rung;
  if (measure === 'range-up' || measure === 'range-down' || measure === 'made-tried')
    return { sets: pass.sets, target: pass.target, why: 'measured against the pass mark' };
  if (rung.family === 'balance' && measure === 'hold') {
    const step = BALANCE.find(({ from }) => (best ?? 0) >= from);
    return { ...(step?.dose ?? { sets: MANY_SETS, target: REPS }), why: step?.why ?? '' };
  }
  const wholeDays = recent.filter(({ whole }) => whole).length;
  const sets = wholeDays >= 2 ? MANY_SETS : FEW_SETS;
  if (measure === 'reps') {
    const target = best === undefined ? REPS : Math.max(1, Math.min(Math.round(best), REPS));
    return { sets, target, why: 'strength: 5 clean reps, 4-5 sets' };
  }
  const target = best === undefined ? PYRAMID_START : Math.max(1, Math.round(best));
  const why =
    best === undefined ? 'a new hold starts at 5-6 s' : 'strength: what was clean of late, 4-5 sets';
  return { sets, target, why };
}

/** Where the pass mark is less it is enough; less is better in ranges that go down. */
function capped({ sets, target }: Dose, { measure, pass }: HistoryRung): Dose {
  return { sets, target: measure === 'range-down' ? target : Math.min(target, pass.target) };
}
