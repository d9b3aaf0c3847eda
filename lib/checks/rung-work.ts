import type { HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { SOFT_GROUNDS, type Support } from '#lib/domain/vocabulary.ts';
import { type Factor, isDone, loadPerSecond, setSeconds, supportOf } from './exposure.ts';
import { hasResult } from './set-result.ts';

/** Sets of one piece of work that are alike in side, support and added mass: their seconds add up. */
export type AlikeSets = {
  support: Support | null;
  /** Sets in which something was done. */
  done: number;
  /** Seconds under load, and reps among them. */
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
  alike: readonly AlikeSets[];
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

/** The work of check-ins, each with the index of its day, in their order. */
export function workOf(
  checkIns: Iterable<{ at: number; checkIn: HistoryCheckIn }>,
  { rungs, bodyMassKg }: Client,
): RungWork[] {
  const work: RungWork[] = [];
  // The load of a second is the same for all sets alike of a rung: worked out once.
  const loads = new Map<string, RungLoad>();
  const loadOf = (rungId: string) => {
    const known = loads.get(rungId);
    if (known) return known;
    const rung = rungs.get(rungId);
    const load = rung && { rung, bodyMassKg, known: [] };
    if (load) loads.set(rungId, load);
    return load;
  };
  for (const { at, checkIn } of checkIns) addWork(work, checkIn, at, loadOf);
  return work;
}

type RungLoad = { rung: HistoryRung; bodyMassKg: number | null; known: KnownLoad[] };

/** One entry for each rung; sets stand in order of rung, side and index. Rungs the history does not carry are left out. */
function addWork(
  into: RungWork[],
  checkIn: HistoryCheckIn,
  at: number,
  loadOf: (rungId: string) => RungLoad | undefined,
): void {
  const { sets } = checkIn;
  const softGround = checkIn.ground !== null && SOFT_GROUNDS.includes(checkIn.ground);
  let from = 0;
  while (from < sets.length) {
    const rungId = sets[from]?.rungId ?? '';
    let to = from + 1;
    while (to < sets.length && sets[to]?.rungId === rungId) to += 1;
    const load = loadOf(rungId);
    if (load) into.push(workOn(load, { checkIn, at, sets: sets.slice(from, to), softGround }));
    from = to;
  }
}

type Part = Pick<RungWork, 'checkIn' | 'at' | 'sets'> & { softGround: boolean };

function workOn(load: RungLoad, { checkIn, at, sets, softGround }: Part): RungWork {
  const { rung } = load;
  const alike: AlikeSets[] = [];
  const work = { at, checkIn, rung, sets, alike, left: 0, right: 0, hasResult: false, isTyped: false };
  let first: HistorySet | undefined;
  let here: AlikeSets | undefined;
  for (const set of sets) {
    if (!here || !first || !isAlike(first, set)) {
      const support = supportOf(set, softGround);
      const perSecond = perSecondOf(load, set, support);
      first = set;
      here = { support, done: 0, seconds: 0, reps: 0, perSecond };
      alike.push(here);
    }
    if (set.how === 'typed' || set.how === 'timed') work.isTyped = true;
    if (hasResult(set)) work.hasResult = true;
    if (!isDone(set)) continue;
    here.done += 1;
    if (set.side !== 'right') work.left += 1;
    if (set.side !== 'left') work.right += 1;
    const seconds = setSeconds(set, rung);
    if (seconds === 0) continue;
    here.seconds += seconds;
    if (rung.measure === 'reps') here.reps += set.value ?? 0;
  }
  return work;
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
  const perSecond = loadPerSecond(set, rung, support, bodyMassKg);
  known.push({ side: set.side, addedKg: set.addedKg, support, perSecond });
  return perSecond;
}
