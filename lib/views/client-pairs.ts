import { rungDays } from '#lib/checks/rung-days.ts';
import { hasResult } from '#lib/checks/set-result.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import { median } from '#lib/stats/median.ts';
import { type ClientAxis, dayOn } from './client-axis.ts';
import { apart } from './spread-labels.ts';

export type Pair = { at: number; left: number; right: number; date: string };
export type PairPanel = {
  rungId: string;
  title: string;
  unit: string;
  pairs: Pair[];
  top: number;
  ticks: { value: number; label: string }[];
  /** Right of the line, px from the top. */
  leftAt: number;
  rightAt: number;
  gapAt: number;
  left: string;
  right: string;
  gap: string;
  summary: string;
};

const SHOWN = 2;
const LAST_PAIRS = 6;
const LABEL_GAP = 18;
export const PAIR_HEIGHT = 112;
const STEPS = [1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600];

/**
 * Best left and best right of the same day on the same rung, for each rung done on each side. Newest rungs first,
 * those with the most pairs before the others. Percent difference = (larger - smaller) / larger x 100.
 */
export function pairPanels(view: ClientView, axis: ClientAxis, named: readonly string[]): PairPanel[] {
  return [...view.rungs.values()]
    .filter((rung) => rung.eachSide)
    .map((rung) => ({ rung, pairs: pairsOf(view, axis, rung) }))
    .filter(({ pairs }) => pairs.length > 0)
    .sort(
      (a, b) =>
        Number(named.includes(b.rung.id)) - Number(named.includes(a.rung.id)) ||
        b.pairs.length - a.pairs.length ||
        (a.rung.id < b.rung.id ? -1 : 1),
    )
    .slice(0, SHOWN)
    .map(({ rung, pairs }) => toPanel(rung, pairs));
}

function pairsOf(view: ClientView, axis: ClientAxis, rung: HistoryRung): Pair[] {
  return rungDays(view, rung.id).flatMap((day) => {
    const at = dayOn(axis, day.date) + 0.5;
    const left = bestOf(day.sets, 'left');
    const right = bestOf(day.sets, 'right');
    if (left === undefined || right === undefined || at < 0) return [];
    return [{ at, left, right, date: day.date }];
  });
}

function bestOf(sets: readonly HistorySet[], side: 'left' | 'right'): number | undefined {
  const values = sets.flatMap((set) => (set.side === side && hasResult(set) ? [set.value] : []));
  return values.length === 0 ? undefined : Math.max(...values);
}

function toPanel(rung: HistoryRung, pairs: Pair[]): PairPanel {
  const unit = MEASURE_UNITS[rung.measure];
  const highest = Math.max(1, rung.pass.target, ...pairs.flatMap((pair) => [pair.left, pair.right]));
  const step = STEPS.find((one) => highest / one <= 4) ?? highest;
  const top = Math.ceil((highest * 1.05) / step) * step;
  const last = pairs.at(-1);
  const place = (value: number) => (1 - value / top) * PAIR_HEIGHT - 9;
  const [leftAt, rightAt] = apart([place(last?.left ?? 0), place(last?.right ?? 0)], LABEL_GAP);
  const withUnit = (value: number) => `${value}${unit ? ` ${unit}` : ''}`;
  const gap = gapInWords(pairs.slice(-LAST_PAIRS));
  return {
    rungId: rung.id,
    title: rung.name,
    unit,
    pairs,
    top,
    ticks: Array.from({ length: Math.round(top / step) + 1 }, (_, index) => ({
      value: index * step,
      label: index * step === top ? withUnit(top) : String(index * step),
    })),
    leftAt: leftAt ?? 0,
    rightAt: rightAt ?? 0,
    gapAt: Math.max(leftAt ?? 0, rightAt ?? 0) + LABEL_GAP,
    left: `left ${withUnit(last?.left ?? 0)}`,
    right: `right ${withUnit(last?.right ?? 0)}`,
    gap,
    summary: `${rung.name}: last pair left ${withUnit(last?.left ?? 0)}, right ${withUnit(last?.right ?? 0)}; ${gap}.`,
  };
}

function gapInWords(pairs: readonly Pair[]): string {
  const gaps = pairs.map((pair) => {
    const larger = Math.max(pair.left, pair.right);
    return larger === 0 ? 0 : ((pair.right - pair.left) / larger) * 100;
  });
  const middle = median(gaps) ?? 0;
  const count = `the last ${pairs.length === 1 ? 'pair' : `${pairs.length} pairs`}`;
  if (Math.abs(middle) < 1) return `level over ${count}`;
  return `${middle < 0 ? 'right' : 'left'} ${Math.round(Math.abs(middle))} % behind over ${count}`;
}
