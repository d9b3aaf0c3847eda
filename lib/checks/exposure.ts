import type { HistoryCheckIn, HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { SOFT_GROUNDS, type Support, TISSUES_OFF_THE_HANDS, type Tissue } from '#lib/domain/vocabulary.ts';
import { weightsOnSupport } from './supports.ts';
import type { TissueSide } from './types.ts';

export type TissueLoad = Partial<Record<TissueSide, number>>;
type Conditions = { bodyMassKg?: number | null; softGround?: boolean };
type Shares = { left: number; right: number };

/** Seconds under load of one set, both hands or one. 0 when it was not done, and for ranges: they carry no load. */
export function setSeconds(set: HistorySet, rung: HistoryRung): number {
  if (!isDone(set)) return 0;
  const value = set.value ?? 0;
  switch (rung.measure) {
    case 'hold':
    case 'lowering':
      return Math.max(0, value);
    case 'reps':
      return Math.max(0, value) * (rung.secondsPerRep ?? 0);
    case 'made-tried':
      return (set.tried ?? value) * (rung.secondsPerRep ?? 0);
    default:
      return 0;
  }
}

/** True when the client did something in this set; made-tried counts tries, not only the good ones. */
export function isDone(set: HistorySet): boolean {
  return set.how !== 'not-done' && (set.value !== null || (set.tried ?? 0) > 0);
}

/**
 * Part of body weight each hand carries, 0-1 and over with added load. Two hands: half each. One arm: the working
 * hand its share, the other the helping share. A rung that names no helping share carries on both hands, also when
 * it is trained left and right (a turn to either side) or when the legs alternate.
 */
function handShares(set: HistorySet, rung: HistoryRung, bodyMassKg: number | null = null): Shares {
  if (rung.share === null) return { left: 0, right: 0 };
  const added = set.addedKg && bodyMassKg ? set.addedKg / bodyMassKg : 0;
  if (set.side === 'both' || rung.eachIsLeg || rung.helpingShare === null) {
    const half = Math.max(0, rung.share + added) / 2;
    return { left: half, right: half };
  }
  const working = Math.max(0, rung.share + added);
  return set.side === 'left'
    ? { left: working, right: rung.helpingShare }
    : { left: rung.helpingShare, right: working };
}

/** The support of a set; nothing named on soft ground counts as soft ground. */
export function supportOf(set: HistorySet, softGround = false): Support | null {
  return set.support ?? (softGround ? 'soft-ground' : null);
}

/**
 * Load of one set on each tissue and side, in body-weight seconds: seconds x share of the hand x weight of the rung on
 * its support. Tissues the hands do not load count share 1; on an alternating leg only that leg's side.
 */
export function setTissueLoad(set: HistorySet, rung: HistoryRung, conditions: Conditions = {}): TissueLoad {
  const load: TissueLoad = {};
  addSetLoad(load, set, rung, conditions);
  return load;
}

/** Adds the load of a set to `into`; the sum of a day without a new object for each set. */
function addSetLoad(into: TissueLoad, set: HistorySet, rung: HistoryRung, conditions: Conditions): void {
  addSeconds(into, setSeconds(set, rung), loadPerSecond(set, rung, conditions));
}

function addSeconds(into: TissueLoad, seconds: number, perSecond: readonly Factor[]): void {
  if (seconds === 0) return;
  for (const { key, factor } of perSecond) into[key] = (into[key] ?? 0) + seconds * factor;
}

type Factor = { key: TissueSide; factor: number };
const factorsOfRung = new WeakMap<HistoryRung, Map<string, Factor[]>>();

/**
 * Load of one second on each tissue and side, which is also its peak: share x weight, how hard, beside how much.
 * Worked out once for a rung, side, support and added weight.
 */
export function loadPerSecond(set: HistorySet, rung: HistoryRung, conditions: Conditions): readonly Factor[] {
  const support = supportOf(set, conditions.softGround);
  const name = `${set.side} ${support ?? ''} ${set.addedKg ? `${set.addedKg}/${conditions.bodyMassKg ?? ''}` : ''}`;
  let known = factorsOfRung.get(rung);
  if (!known) {
    known = new Map();
    factorsOfRung.set(rung, known);
  }
  let factors = known.get(name);
  if (!factors) {
    factors = workOutFactors(set, rung, support, conditions.bodyMassKg ?? null);
    known.set(name, factors);
  }
  return factors;
}

function workOutFactors(
  set: HistorySet,
  rung: HistoryRung,
  support: Support | null,
  bodyMassKg: number | null,
): Factor[] {
  const hands = handShares(set, rung, bodyMassKg);
  const weights = weightsOnSupport(rung.weights, support);
  const factors: Factor[] = [];
  for (const name in weights) {
    const tissue = name as Tissue;
    const weight = weights[tissue] ?? 0;
    const shares = TISSUES_OFF_THE_HANDS.includes(tissue) ? legShares(set, rung) : hands;
    for (const side of ['left', 'right'] as const) {
      const factor = shares[side] * weight;
      if (factor > 0) factors.push({ key: `${tissue}:${side}`, factor });
    }
  }
  return factors;
}

/** One session's load in arbitrary units: effort (0-10) x minutes (Foster 2001). `undefined` when either is missing. */
function sessionLoadOf(checkIn: Pick<HistoryCheckIn, 'kind' | 'effort' | 'minutes'>): number | undefined {
  if (checkIn.kind === 'rest') return 0;
  if (checkIn.effort === null || checkIn.minutes === null) return undefined;
  return checkIn.effort * checkIn.minutes;
}

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
  const tissueLoad: TissueLoad = {};
  let trained = false;
  let soft = false;
  let worstPain: number | null = null;
  let sessionLoad: number | undefined = checkIns.length > 0 ? 0 : undefined;
  for (const checkIn of checkIns) {
    const load = sessionLoadOf(checkIn);
    sessionLoad = load === undefined || sessionLoad === undefined ? undefined : sessionLoad + load;
    const softGround = checkIn.ground !== null && SOFT_GROUNDS.includes(checkIn.ground);
    soft ||= softGround;
    trained ||= checkIn.kind === 'training';
    addSetsLoad(tissueLoad, checkIn.sets, rungs, { bodyMassKg, softGround });
    if (checkIn.nothingHurts) worstPain = Math.max(worstPain ?? 0, 0);
    for (const pain of checkIn.pain) {
      if (pain.kind === 'joint') worstPain = Math.max(worstPain ?? 0, pain.value);
    }
  }
  return { trained, sessionLoad, tissueLoad, worstPain, soft };
}

/** Sets alike that follow each other are added up in seconds first. */
function addSetsLoad(
  into: TissueLoad,
  sets: readonly HistorySet[],
  rungs: ReadonlyMap<string, HistoryRung>,
  conditions: Conditions,
): void {
  let alike: HistorySet | undefined;
  let seconds = 0;
  const flush = () => {
    const rung = alike && rungs.get(alike.rungId);
    if (alike && rung) addSeconds(into, seconds, loadPerSecond(alike, rung, conditions));
  };
  for (const set of sets) {
    const rung = rungs.get(set.rungId);
    if (!rung) continue;
    if (!alike || !isAlike(alike, set)) {
      flush();
      alike = set;
      seconds = 0;
    }
    seconds += setSeconds(set, rung);
  }
  flush();
}

function isAlike(a: HistorySet, b: HistorySet): boolean {
  return a.rungId === b.rungId && a.side === b.side && a.support === b.support && a.addedKg === b.addedKg;
}

function legShares(set: HistorySet, rung: HistoryRung): Shares {
  const oneLeg = rung.eachIsLeg && set.side !== 'both';
  return { left: oneLeg && set.side === 'right' ? 0 : 1, right: oneLeg && set.side === 'left' ? 0 : 1 };
}
