import type { ClientHistory, HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { aPlanItem, day } from '#tests/fixtures/history-builders.ts';
import { askedOf, type Base, ladderIds } from './world.ts';

/** A few numbers that each story reads in its own way. */
export type Numbers = {
  size: number;
  back: number;
  side: 'left' | 'right';
  one: boolean;
  other: boolean;
};
/** A client while stories bend the life that is written down. */
export type Draft = {
  base: Base;
  /** Index of the evening looked from. */
  last: number;
  calendar: ('train' | 'rest' | 'none')[];
  history: ClientHistory;
  /** Applied in order to every training check-in. */
  changes: ((checkIn: HistoryCheckIn, at: number) => HistoryCheckIn)[];
};
export type Teller = (draft: Draft, numbers: Numbers) => void;

export function put(draft: Draft, from: number, to: number, what: 'train' | 'rest' | 'none'): void {
  for (let at = Math.max(0, from); at <= Math.min(to, draft.last); at += 1) draft.calendar[at] = what;
}

export function from(
  draft: Draft,
  first: number,
  change: (checkIn: HistoryCheckIn, at: number) => HistoryCheckIn,
) {
  draft.changes.push((checkIn, at) => (at >= first ? change(checkIn, at) : checkIn));
}

export function eachSet(checkIn: HistoryCheckIn, change: (set: HistorySet) => HistorySet): HistoryCheckIn {
  return { ...checkIn, sets: checkIn.sets.map(change) };
}

/** As many sets again, up to `times` as many. */
export function moreSets(
  checkIn: HistoryCheckIn,
  of: (set: HistorySet) => boolean,
  times: number,
): HistoryCheckIn {
  const more = checkIn.sets
    .filter(of)
    .flatMap((set) =>
      Array.from({ length: times - 1 }, (_, at) => ({ ...set, index: set.index + 20 * (at + 1) })),
    );
  return { ...checkIn, sets: [...checkIn.sets, ...more] };
}

export function sore(checkIn: HistoryCheckIn, pain: HistoryCheckIn['pain']): HistoryCheckIn {
  return { ...checkIn, nothingHurts: false, pain: [...checkIn.pain, ...pain] };
}

export const instant = (at: number, hour = 12) => `${day(at)}T${String(hour).padStart(2, '0')}:00:00.000Z`;
export const drillOf = (draft: Draft, { size }: Numbers) =>
  ladderIds(draft.base)[size % draft.base.ladders] ?? '';

/** A new plan from a day on that asks another share of the pass mark. */
export function replan(draft: Draft, share: number, first: number): void {
  const { plans, rungs } = draft.history;
  const old = plans.at(-1);
  if (!old) return;
  const items = old.items.map((item) => {
    const rung = rungs.find((each) => each.id === item.rungId);
    return aPlanItem({ ...item, target: rung ? askedOf(rung, share) : item.target });
  });
  plans.push({ ...old, version: old.version + 1, from: day(Math.max(0, first)), items });
}

export function targetOf(draft: Draft, set: HistorySet, share = 1): number {
  const rung = draft.history.rungs.find((each) => each.id === set.rungId);
  return rung ? askedOf(rung, share) : 1;
}
