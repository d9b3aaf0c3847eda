import { bestHolds, daysOn, kindsOfHold } from '#lib/checks/holds-of-window.ts';
import { hasResult } from '#lib/checks/set-result.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { asPercent, plainNumber } from '#lib/checks/words.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { type ClientAxis, dayOn } from './client-axis.ts';

export type WindowPoint = { at: number; date: string; seconds: number };
export type WindowPanel = {
  key: string;
  title: string;
  /** Best clean hold of each day, s: heel pulls go up from the middle, toe pulls down. */
  heel: WindowPoint[];
  toe: WindowPoint[];
  /** Seconds at the top and at the foot. */
  top: number;
  /** Right of the line. */
  lines: { text: string; strong: boolean }[];
  summary: string;
};

export const WINDOW_HEIGHT = 120;
const STEP = 10;

/**
 * The balance window: how long the client holds near its two edges, heel pulls (over-balance) above the middle and toe
 * pulls (under-balance) below, one panel for each kind of hold that has both. Only days that count.
 */
export function windowPanels(view: ClientView, axis: ClientAxis, limits: Limits): WindowPanel[] {
  return kindsOfHold(view).flatMap((kind) => {
    const heel = pointsOf(view, axis, kind.over);
    const toe = pointsOf(view, axis, kind.under);
    if (heel.length === 0 && toe.length === 0) return [];
    const title = kind.name === '' ? 'Heel and toe pulls' : `Heel and toe pulls, ${kind.name}`;
    const lines = linesOf(view, kind, limits);
    const highest = Math.max(STEP, ...heel.map((one) => one.seconds), ...toe.map((one) => one.seconds));
    return [
      {
        key: `window:${kind.name}`,
        title,
        heel,
        toe,
        top: Math.ceil(highest / STEP) * STEP,
        lines,
        summary: `${title}: ${lines.map((line) => line.text).join('; ')}.`,
      },
    ];
  });
}

function pointsOf(view: ClientView, axis: ClientAxis, rungs: readonly HistoryRung[]): WindowPoint[] {
  const best = new Map<string, number>();
  for (const day of daysOn(view, rungs)) {
    if (!day.counts || dayOn(axis, day.date) < 0) continue;
    for (const set of day.sets.filter(hasResult)) {
      if (set.clean) best.set(day.date, Math.max(set.value, best.get(day.date) ?? 0));
    }
  }
  return [...best]
    .map(([date, seconds]) => ({ at: dayOn(axis, date) + 0.5, date, seconds }))
    .sort((a, b) => a.at - b.at);
}

/** Medians of the days that the check reads, or how many there are. */
function linesOf(
  view: ClientView,
  kind: { over: HistoryRung[]; under: HistoryRung[] },
  limits: Limits,
): WindowPanel['lines'] {
  const days = limits['windowGap.days'];
  const from = addDays(view.asOf.date, 1 - days);
  const holds = (rungs: HistoryRung[]) =>
    bestHolds(
      daysOn(view, rungs).filter((day) => day.date >= from),
      rungs,
    );
  const [heel, toe] = [holds(kind.over), holds(kind.under)];
  const said = (name: string, all: readonly number[]) => {
    const middle = median(all);
    return middle === undefined
      ? `${name}: none clean in ${days} days`
      : `${name} ${plainNumber(middle)} s, median of ${all.length} ${all.length === 1 ? 'day' : 'days'}`;
  };
  return [
    { text: said('heel pulls', heel), strong: true },
    { text: said('toe pulls', toe), strong: true },
    { text: apartInWords(heel, toe, limits), strong: false },
  ];
}

function apartInWords(heel: readonly number[], toe: readonly number[], limits: Limits): string {
  const needed = limits['windowGap.holds'];
  if (heel.length < needed || toe.length < needed)
    return `${heel.length} and ${toe.length} of ${needed} days with each: too few to compare`;
  const [heelHold, toeHold] = [median(heel) ?? 0, median(toe) ?? 0];
  const larger = Math.max(heelHold, toeHold, 1);
  const share = Math.abs(heelHold - toeHold) / larger;
  return `${asPercent(share)} apart, uneven over ${asPercent(limits['windowGap.share'])}`;
}
