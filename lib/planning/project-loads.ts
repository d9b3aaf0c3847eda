import type { LoadSeries } from '#lib/checks/load-series.ts';
import { loadsOf } from '#lib/checks/load-series.ts';
import { DEFAULT_LIMITS, type Limits } from '#lib/checks/thresholds.ts';
import { TISSUE_SIDES } from '#lib/checks/tissue-sides.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { spreadOf, totalUpTo, usualWeek } from '#lib/checks/usual-week.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import type { Tissue } from '#lib/domain/vocabulary.ts';
import type { WeekKind } from './easy-week.ts';
import type { EditedPlan } from './edited-plan.ts';
import { type ForeseenWeek, foreseenWeeks } from './foreseen-views.ts';
import { type ForeseenWarning, foreseenWarnings } from './foreseen-warnings.ts';
import { type PartCovered, partsCovered } from './parts-covered.ts';

/** Usual week of a series with its spread; null: not enough ordinary weeks known. */
export type UsualLoad = { usual: number; spread: number; weeks: number } | null;
export type TissueForeseen = {
  tissue: Tissue;
  side: 'left' | 'right';
  /** Body-weight seconds of each of the next weeks, in the unit of the checks. */
  weeks: number[];
  usual: UsualLoad;
};
export type Projection = {
  weeks: { from: string; until: string; kind: WeekKind; sessions: number }[];
  /** Tissues and sides with any load in the weeks or usually, in the order of their names. */
  tissues: TissueForeseen[];
  /** Session load, AU; null: no effort or minutes known to foresee it by. */
  session: { weeks: (number | null)[]; usual: UsualLoad };
  /** Effort (0-10) taken for every session, and told minutes for each estimated minute; null: nothing known. */
  assumed: { effort: number | null; pace: number | null };
  /** What load-jump and stacked-stress would say, in their words. */
  warnings: ForeseenWarning[];
  parts: PartCovered[];
};

type Asked = {
  history: ClientHistory;
  plan: EditedPlan;
  /** The last day that is over. */
  date: string;
  /** Rungs of the plan that the history does not carry. */
  rungs?: readonly HistoryRung[] | undefined;
  limits?: Limits | undefined;
};

/**
 * What the next four weeks come to if they are done exactly as the plan says: load of each tissue and side and of the
 * sessions, week by week, against the usual week as the checks will know it at the end of the first of them; and what
 * the checks would then say. The figures are those of the checks, computed by the checks. Easy weeks, limits and said
 * absences are obeyed; a rung that is neither in the history nor given counts nothing. Nothing here predicts harm.
 */
export function projectLoads({ history, plan, date, rungs, limits = DEFAULT_LIMITS }: Asked): Projection {
  const { weeks, usual } = foreseenWeeks({ history, plan, date, rungs, limits });
  const [first] = weeks;
  const last = weeks.at(-1);
  if (!first || !last) throw new Error('no weeks were foreseen');
  return {
    weeks: weeks.map(({ from, until, kind, sessions }) => ({ from, until, kind, sessions })),
    tissues: tissuesForeseen(weeks, first, limits),
    session: {
      weeks: weeks.map(({ view }) => {
        const week = totalUpTo(loadsOf(view).session, view.days.length - 1, limits['week.days']);
        return week.known === week.of ? week.total : null;
      }),
      usual: usualOf(first.view, loadsOf(first.view).session, limits),
    },
    assumed: { effort: usual.effort, pace: usual.pace },
    warnings: foreseenWarnings(weeks, limits),
    parts: partsCovered(plan, last.view.rungs),
  };
}

function tissuesForeseen(
  weeks: readonly ForeseenWeek[],
  { view: first }: ForeseenWeek,
  limits: Limits,
): TissueForeseen[] {
  return TISSUE_SIDES.flatMap(({ key, tissue, side }) => {
    const totals = weeks.map(({ view }) => {
      const series = loadsOf(view).tissues.get(key);
      return series ? totalUpTo(series, view.days.length - 1, limits['week.days']).total : 0;
    });
    const series = loadsOf(first).tissues.get(key);
    const usual = series ? usualOf(first, series, limits) : null;
    if (totals.every((total) => total === 0) && !(usual && usual.usual > 0)) return [];
    return [{ tissue, side, weeks: totals, usual }];
  });
}

function usualOf(view: ClientView, series: LoadSeries, limits: Limits): UsualLoad {
  const found = usualWeek(view, series, limits);
  return found.enough ? { usual: found.usual, spread: spreadOf(found), weeks: found.weeks } : null;
}
