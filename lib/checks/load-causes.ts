import type { Tissue } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { exceeds, reaches } from './compare.ts';
import { type Drill, drillsOf, weightOn } from './drill-days.ts';
import { type LoadSeries, loadsOf } from './load-series.ts';
import { newStartAt } from './new-start.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { totalUpTo, usualWeek } from './usual-week.ts';

/** Sessions with a known load, oldest first: where in the view, and AU. */
export function sessionsOf(view: ClientView): { index: number; load: number }[] {
  const sessions: { index: number; load: number }[] = [];
  view.days.forEach(({ checkIns }, index) => {
    for (const { kind, effort, minutes } of checkIns) {
      if (kind === 'training' && effort !== null && minutes !== null)
        sessions.push({ index, load: effort * minutes });
    }
  });
  return sessions;
}

export type BiggerSessions = { mean: number; usual: number; ratio: number; count: number; from: string };

/** Cause (i): the last sessions were all bigger than the usual one and, on average, much bigger. */
export function biggerSessions(view: ClientView, limits: Limits): BiggerSessions | undefined {
  const start = newStartAt(view);
  const sessions = sessionsOf(view).filter(({ index }) => index >= start);
  const count = limits['loadJump.sessions'];
  const last = sessions.slice(-count);
  const before = sessions.slice(-count - limits['loadJump.sessionsBefore'], -count);
  const usual = median(before.map(({ load }) => load));
  const first = view.days[last[0]?.index ?? -1];
  if (!first || last.length < count || before.length < limits['loadJump.sessionsAtLeast'] || !usual)
    return undefined;
  const mean = last.reduce((sum, { load }) => sum + load, 0) / count;
  const each = last.every(({ load }) => reaches(load, limits['loadJump.sessionEach'] * usual));
  if (!each || !reaches(mean, limits['loadJump.sessionMean'] * usual)) return undefined;
  return { mean, usual, ratio: mean / usual, count, from: first.date };
}

export type MoreSets = { drill: Drill; sets: number[]; usual: number; mean: number; from: number };

export type SetsRule = {
  days: number;
  before: number;
  beforeAtLeast: number;
  each: number;
  mean: number;
  /** All the days looked at lie within this many days up to the last of the view. */
  within: number;
};

/** A drill done with more than its usual number of sets on each of its last days; `undefined` when not, or too few days. */
export function moreSets(view: ClientView, drill: Drill, rule: SetsRule): MoreSets | undefined {
  const last = drill.days.slice(-rule.days);
  const first = last[0];
  if (!first || last.length < rule.days || first.index <= view.days.length - 1 - rule.within)
    return undefined;
  const before = setsBefore(drill, rule, newStartAt(view));
  const usual = median(before);
  if (before.length < rule.beforeAtLeast || !usual) return undefined;
  const sets = last.map((day) => day.sets);
  const mean = sets.reduce((sum, each) => sum + each, 0) / sets.length;
  const all = sets.every((each) => reaches(each, rule.each * usual));
  return all && reaches(mean, rule.mean * usual)
    ? { drill, sets, usual, mean, from: first.index }
    : undefined;
}

/** Sets of the days before the last ones that are in no easy week, newest first. */
function setsBefore({ days }: Drill, rule: SetsRule, from: number): number[] {
  const before: number[] = [];
  for (let at = days.length - 1 - rule.days; at >= 0 && before.length < rule.before; at -= 1) {
    const day = days[at];
    if (day && day.index < from) break;
    if (day && !day.easy) before.push(day.sets);
  }
  return before;
}

export type HeavyTissue = {
  tissue: Tissue;
  side: 'left' | 'right' | 'both';
  total: number;
  usual: number;
  ratio: number;
  /** The drill that brought it, when one was done with more sets. */
  cause: MoreSets | undefined;
};

/**
 * Tissues whose 7-day load is over 1.25 x the usual week on a side and big enough to matter (both sides together),
 * largest ratio first, each with the drill that brought it, if one did (cause ii).
 */
export function heavyTissues(view: ClientView, limits: Limits): HeavyTissue[] {
  const loads = loadsOf(view);
  const heavy: HeavyTissue[] = [];
  for (const [tissue, loaded] of loads.sides) {
    const found = heavyTissue(view, loaded, limits);
    if (found) heavy.push({ tissue, ...found, cause: undefined });
  }
  if (heavy.length === 0) return heavy;
  const rule = setsRule(limits);
  const more = drillsOf(view)
    .map((drill) => moreSets(view, drill, rule))
    .filter((found) => found !== undefined);
  for (const one of heavy) one.cause = more.find((drill) => loadsTissue(view, drill, one.tissue, limits));
  return heavy.sort((a, b) => b.ratio - a.ratio || (a.tissue < b.tissue ? -1 : 1));
}

function heavyTissue(
  view: ClientView,
  loaded: readonly { side: 'left' | 'right'; series: LoadSeries }[],
  limits: Limits,
): Omit<HeavyTissue, 'tissue' | 'cause'> | undefined {
  const [last, length] = [view.days.length - 1, limits['week.days']];
  let most = 0;
  for (const { series } of loaded) most += totalUpTo(series, last, length).total;
  // Most tissues of most clients are under the floor: their usual week need not be worked out.
  if (!reaches(most, limits['loadJump.floorBws'])) return undefined;
  const sides = [];
  let total = 0;
  let usual = 0;
  for (const { side, series } of loaded) {
    const usually = usualWeek(view, series, limits);
    if (!usually.enough) continue;
    const week = totalUpTo(series, last, length).total;
    sides.push({ side, total: week, usual: usually.usual });
    total += week;
    usual += usually.usual;
  }
  const over = sides.filter(
    (side) => side.usual > 0 && reaches(side.total, limits['loadJump.tissueRatio'] * side.usual),
  );
  const big = isBig(total, usual, limits['loadJump.floorBws'], limits);
  const [first, second] = over;
  if (!first || !big) return undefined;
  const ratio = Math.max(...over.map((side) => side.total / side.usual));
  return { side: second ? 'both' : first.side, total, usual, ratio };
}

/** At least the floor, and a good part of the floor above usual: a doubled trifle is no jump. */
export function isBig(total: number, usual: number, floor: number, limits: Limits): boolean {
  return (
    reaches(total, floor) &&
    reaches(total - usual, limits['loadJump.aboveShare'] * floor) &&
    exceeds(total, usual)
  );
}

function setsRule(limits: Limits): SetsRule {
  return {
    days: limits['loadJump.setDays'],
    before: limits['loadJump.setDaysBefore'],
    beforeAtLeast: limits['loadJump.setDaysAtLeast'],
    each: limits['loadJump.setsEach'],
    mean: limits['loadJump.setsMean'],
    within: 2 * limits['week.days'],
  };
}

function loadsTissue(view: ClientView, { drill, sets }: MoreSets, tissue: Tissue, limits: Limits): boolean {
  return drill.days
    .slice(-sets.length)
    .every((day) => reaches(weightOn(view, drill, day, tissue), limits['tissue.loaded']));
}
