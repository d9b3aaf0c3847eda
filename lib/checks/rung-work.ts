import type { HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import type { Support } from '#lib/domain/vocabulary.ts';
import { type Factor, isDone, loadPerSecond, setSeconds, supportOf } from './exposure.ts';
import { isOnSoftGround } from './soft-ground.ts';

/** Sets of one rung on one day that are alike in side, support and added mass: their seconds add up. */
export type AlikeSets = {
  /** Index of the day in the view. */
  at: number;
  rung: HistoryRung;
  /** Seconds under load, over 0, and reps among them. */
  seconds: number;
  reps: number;
  perSecond: readonly Factor[];
};

/** The sets of one rung in one check-in, and what the rules count of them: gone through once for all rules. */
export type RungWork = {
  /** Index of the day in the view. */
  at: number;
  checkIn: HistoryCheckIn;
  rung: HistoryRung;
  sets: readonly HistorySet[];
  /** Sets done on each side; one of both sides counts on each. */
  left: number;
  right: number;
  /** Whether a set has a result, and whether one was typed or timed. */
  hasResult: boolean;
  isTyped: boolean;
};

type KnownLoad = Pick<HistorySet, 'side' | 'addedKg'> & {
  support: Support | null;
  perSecond: readonly Factor[];
};
type Client = { rungs: ReadonlyMap<string, HistoryRung>; bodyMassKg: number | null };

export type Work = { byRung: readonly RungWork[]; alike: readonly AlikeSets[] };
type Lists = { byRung: RungWork[]; alike: AlikeSets[] };

/**
 * The work of check-ins, day by day from the `from`th on, in their order. Rungs that `rungs` does not carry are left out.
 * `loads`: the load of a second is the same for all sets alike of a rung of a client, and is worked out once.
 */
export function workOf(
  days: readonly { checkIns: readonly HistoryCheckIn[] }[],
  { rungs, bodyMassKg }: Client,
  from = 0,
  loads: RungLoads = new Map(),
): Work {
  const work: Lists = { byRung: [], alike: [] };
  const loadOf = (rungId: string) => {
    const known = loads.get(rungId);
    if (known) return known;
    const rung = rungs.get(rungId);
    const load = rung && { rung, bodyMassKg, known: [] };
    if (load) loads.set(rungId, load);
    return load;
  };
  for (let at = from; at < days.length; at += 1) {
    for (const checkIn of days[at]?.checkIns ?? []) addWork(work, checkIn, at, loadOf);
  }
  return work;
}

export type RungLoads = Map<string, RungLoad>;
type RungLoad = { rung: HistoryRung; bodyMassKg: number | null; known: KnownLoad[] };

type LoadOf = (rungId: string) => RungLoad | undefined;

/**
 * Sums of floating numbers depend on their order: rungs of a check-in come in the order of their ids and their sets by
 * side and index, whatever the order of rows. Goes through the sets once; only where those of one rung are not together
 * and in order are they sorted first.
 */
function addWork(into: Lists, checkIn: HistoryCheckIn, at: number, loadOf: LoadOf): void {
  const [works, alike] = [into.byRung.length, into.alike.length];
  const together = addSets(into, checkIn, checkIn.sets, at, loadOf);
  if (together) {
    sortByRung(into.byRung, works);
    sortByRung(into.alike, alike);
  }
  if (!together || isTwice(into.byRung, works)) {
    into.byRung.length = works;
    into.alike.length = alike;
    addSets(into, checkIn, [...checkIn.sets].sort(inWorkOrder), at, loadOf);
  }
}

/** From an index on. Few and mostly in order: insertion keeps those of one rung as they came. */
function sortByRung(items: { rung: HistoryRung }[], from: number): void {
  for (let at = from + 1; at < items.length; at += 1) {
    const item = items[at];
    if (!item) continue;
    let to = at;
    for (; to > from; to -= 1) {
      const before = items[to - 1];
      if (!before || before.rung.id <= item.rung.id) break;
      items[to] = before;
    }
    items[to] = item;
  }
}

function isTwice(sorted: readonly RungWork[], from: number): boolean {
  for (let at = from + 1; at < sorted.length; at += 1) {
    if (sorted[at]?.rung.id === sorted[at - 1]?.rung.id) return true;
  }
  return false;
}

/** False as soon as two sets of a rung are not in order. */
function addSets(
  into: Lists,
  checkIn: HistoryCheckIn,
  sets: readonly HistorySet[],
  at: number,
  loadOf: LoadOf,
): boolean {
  const softGround = isOnSoftGround(checkIn);
  let from = 0;
  while (from < sets.length) {
    const to = endOfRung(sets, from);
    if (to === -1) return false;
    const load = loadOf(sets[from]?.rungId ?? '');
    if (load) {
      const work: RungWork = {
        at,
        checkIn,
        rung: load.rung,
        sets: sets.slice(from, to),
        left: 0,
        right: 0,
        hasResult: false,
        isTyped: false,
      };
      count(work, load, softGround, into.alike);
      into.byRung.push(work);
    }
    from = to;
  }
  return true;
}

/** Where the sets of the rung at `from` end; -1 when they are out of order. */
function endOfRung(sets: readonly HistorySet[], from: number): number {
  let before = sets[from];
  for (let to = from + 1; to < sets.length; to += 1) {
    const set = sets[to];
    if (!before || !set) return to;
    if (set.rungId !== before.rungId) return to;
    if (inRungOrder(before, set) > 0) return -1;
    before = set;
  }
  return sets.length;
}

function inWorkOrder(a: HistorySet, b: HistorySet): number {
  if (a.rungId !== b.rungId) return a.rungId < b.rungId ? -1 : 1;
  return inRungOrder(a, b);
}

function inRungOrder(a: HistorySet, b: HistorySet): number {
  if (a.side !== b.side) return a.side < b.side ? -1 : 1;
  return a.index - b.index;
}

function count(work: RungWork, load: RungLoad, softGround: boolean, alike: AlikeSets[]): void {
  const { rung, sets, at } = work;
  let here: AlikeSets | undefined;
  let first: HistorySet | undefined;
  for (const set of sets) {
    if (set.how === 'typed' || set.how === 'timed') work.isTyped = true;
    if (!isDone(set)) continue;
    if (set.value !== null) work.hasResult = true;
    if (set.side !== 'right') work.left += 1;
    if (set.side !== 'left') work.right += 1;
    const seconds = setSeconds(set, rung);
    if (seconds === 0) continue;
    if (!here || !first || !isAlike(first, set)) {
      first = set;
      here = { at, rung, seconds: 0, reps: 0, perSecond: perSecondOf(load, set, supportOf(set, softGround)) };
      alike.push(here);
    }
    here.seconds += seconds;
    if (rung.measure === 'reps') here.reps += set.value ?? 0;
  }
}

function isAlike(a: HistorySet, b: HistorySet): boolean {
  return a.side === b.side && a.support === b.support && a.addedKg === b.addedKg;
}

function perSecondOf(
  { rung, bodyMassKg, known }: RungLoad,
  set: HistorySet,
  support: Support | null,
): readonly Factor[] {
  for (const one of known) {
    if (one.side === set.side && one.support === support && one.addedKg === set.addedKg) return one.perSecond;
  }
  const perSecond = set.addedKg
    ? loadPerSecond(set, rung, support, bodyMassKg)
    : withoutAdded(set, rung, support);
  known.push({ side: set.side, addedKg: set.addedKg, support, perSecond });
  return perSecond;
}

/** The load of a second without added mass is the same for all clients on a rung: a night meets it again and again. */
const bare = new WeakMap<HistoryRung, Map<string, readonly Factor[]>>();

function withoutAdded(set: HistorySet, rung: HistoryRung, support: Support | null): readonly Factor[] {
  let known = bare.get(rung);
  if (!known) {
    known = new Map();
    bare.set(rung, known);
  }
  const key = `${set.side} ${support}`;
  let perSecond = known.get(key);
  if (!perSecond) {
    perSecond = loadPerSecond(set, rung, support, null);
    known.set(key, perSecond);
  }
  return perSecond;
}
