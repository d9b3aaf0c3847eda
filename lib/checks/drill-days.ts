import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { type Family, SOFT_GROUNDS, type Support, type Tissue } from '#lib/domain/vocabulary.ts';
import { isDone, supportOf } from './exposure.ts';
import { weightsOnSupport } from './supports.ts';
import type { ClientView } from './types.ts';

/** One training day of one drill (a ladder: two rungs of it on a day are one drill). */
export type DrillDay = {
  index: number;
  /** Sets done, of the side that did more; a set of both sides counts once. */
  sets: number;
  easy: boolean;
  /** Largest weight of a done set on each tissue. */
  weights: Partial<Record<Tissue, number>>;
};
export type Drill = { ladderId: string; name: string; family: Family; days: DrillDay[] };

const made = new WeakMap<ClientView, Drill[]>();

/** Every drill with its training days, oldest first; drills in the order of their ids. Ranges are no drills: no load. */
export function drillsOf(view: ClientView): Drill[] {
  const known = made.get(view);
  if (known) return known;
  const drills = new Map<string, Drill>();
  view.days.forEach((day, index) => {
    for (const checkIn of day.checkIns) {
      const softGround = checkIn.ground !== null && SOFT_GROUNDS.includes(checkIn.ground);
      for (const set of checkIn.sets) {
        const rung = view.rungs.get(set.rungId);
        if (!rung || !isDone(set) || rung.measure === 'range-up' || rung.measure === 'range-down') continue;
        count(dayOf(drillOf(drills, rung), index, day.easy), set, rung, softGround);
      }
    }
  });
  const list = [...drills.values()].sort((a, b) => (a.ladderId < b.ladderId ? -1 : 1));
  for (const drill of list) for (const day of drill.days) settle(day as Counted);
  made.set(view, list);
  return list;
}

/** Sets by side while a day is being counted. */
type Counted = DrillDay & { left: number; right: number; lastRung: string; lastSupport: Support | null };

function drillOf(drills: Map<string, Drill>, rung: HistoryRung): Drill {
  const known = drills.get(rung.ladderId);
  if (known) return known;
  const drill: Drill = { ladderId: rung.ladderId, name: rung.ladder, family: rung.family, days: [] };
  drills.set(rung.ladderId, drill);
  return drill;
}

function dayOf(drill: Drill, index: number, easy: boolean): Counted {
  const latest = drill.days.at(-1);
  if (latest?.index === index) return latest as Counted;
  const day: Counted = {
    index,
    sets: 0,
    easy,
    weights: {},
    left: 0,
    right: 0,
    lastRung: '',
    lastSupport: null,
  };
  drill.days.push(day);
  return day;
}

function count(day: Counted, set: HistorySet, rung: HistoryRung, softGround: boolean): void {
  if (set.side !== 'right') day.left += 1;
  if (set.side !== 'left') day.right += 1;
  const support = supportOf(set, softGround);
  if (day.lastRung === rung.id && day.lastSupport === support) return;
  day.lastRung = rung.id;
  day.lastSupport = support;
  const weights = weightsOnSupport(rung.weights, support);
  for (const name in weights) {
    const tissue = name as Tissue;
    day.weights[tissue] = Math.max(day.weights[tissue] ?? 0, weights[tissue] ?? 0);
  }
}

function settle(day: Counted): void {
  day.sets = Math.max(day.left, day.right);
}
