import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { type Support, TISSUES_OFF_THE_HANDS, type Tissue } from '#lib/domain/vocabulary.ts';
import { weightsOnSupport } from './supports.ts';
import { tissueRow } from './tissue-sides.ts';
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
  const seconds = setSeconds(set, rung);
  if (seconds === 0) return load;
  const support = supportOf(set, conditions.softGround);
  for (const { key, factor } of loadPerSecond(set, rung, support, conditions.bodyMassKg ?? null)) {
    load[key] = seconds * factor;
  }
  return load;
}

/** Load of one second on one tissue and side, which is also its peak: share x weight, how hard, beside how much. */
export type Factor = { key: TissueSide; tissue: Tissue; index: number; factor: number };

/** Load of one second of a set on each tissue and side that it loads. */
export function loadPerSecond(
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
      if (factor > 0) {
        const { key, index } = tissueRow(tissue, side);
        factors.push({ key, tissue, index, factor });
      }
    }
  }
  return factors;
}

function legShares(set: HistorySet, rung: HistoryRung): Shares {
  const oneLeg = rung.eachIsLeg && set.side !== 'both';
  return { left: oneLeg && set.side === 'right' ? 0 : 1, right: oneLeg && set.side === 'left' ? 0 : 1 };
}
