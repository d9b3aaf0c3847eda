import { weightsOnSupport } from '#lib/checks/supports.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { Family, Measure, Support, Tissue } from '#lib/domain/vocabulary.ts';

/** What a swap is looked for by: a rung with its drill and ladder. */
export type SwapRung = {
  id: string;
  ladderId: string;
  part: string;
  skill: string;
  position: number;
  name: string;
  family: Family;
  measure: Measure;
  weights: Partial<Record<Tissue, number>>;
  equipment: readonly string[];
  /** The head comes below the heart. */
  upsideDown?: boolean | undefined;
};
export type Swap = {
  rungId: string;
  /** The rung to do instead; the same one when only the support changes. */
  insteadId: string;
  support: Support | null;
  tissue: Tissue;
  /** In order of preference, from 0. */
  position: number;
  why: string;
};

/** At most this part of the weight on the sore tissue. Common practice, no source. */
const MOST_OF_WEIGHT = 0.5;
/** Supports tried on the floor, the least kit last needed first. Common practice, no source. */
const FLOOR_SUPPORTS: readonly Support[] = ['parallel-bars', 'fists', 'wedge', 'hands-turned-out'];
const BAR_SUPPORTS: readonly Support[] = ['bar-straps'];
/** More choices only make the choice longer. Own choice. */
const MOST_EASIER = 2;
const MOST_OTHER = 2;

/**
 * What may be done instead of each rung to spare one tissue: the same part, with at most half the weight on that
 * tissue. Supports first, then easier rungs of the ladder (nearest first), then rungs of other ladders of the part.
 * One list for every tissue a rung loads with 0.3 or more; none where nothing of the part spares it. Common practice.
 */
export function swapsOf(rungs: readonly SwapRung[], loaded = DEFAULT_LIMITS['tissue.loaded']): Swap[] {
  return rungs.flatMap((rung) => {
    const tissues = (Object.keys(rung.weights) as Tissue[]).sort();
    const heavy = tissues.filter((tissue) => (rung.weights[tissue] ?? 0) >= loaded);
    return heavy.flatMap((tissue) => swapsFor(rung, tissue, rungs));
  });
}

/**
 * What may be done instead of an upside-down rung while that is ruled out: rungs of the same part with the head up, easier
 * ones of its ladder first (nearest first), then the nearest of other ladders. None where the part has none. Common
 * practice.
 */
export function headUpSwaps(rung: SwapRung, rungs: readonly SwapRung[]): string[] {
  const others = samePartAs(rung, rungs).filter((other) => !other.upsideDown);
  return [...easierRungs(rung, others), ...otherLadders(rung, others)].map(({ id }) => id);
}

function samePartAs(rung: SwapRung, rungs: readonly SwapRung[]): SwapRung[] {
  const isRange = ({ measure }: SwapRung) => measure === 'range-up' || measure === 'range-down';
  return rungs.filter(
    (other) =>
      other.id !== rung.id &&
      other.part === rung.part &&
      other.skill === rung.skill &&
      isRange(other) === isRange(rung),
  );
}

function swapsFor(rung: SwapRung, tissue: Tissue, rungs: readonly SwapRung[]): Swap[] {
  const most = (rung.weights[tissue] ?? 0) * MOST_OF_WEIGHT;
  const spares = (other: SwapRung) => (other.weights[tissue] ?? 0) <= most;
  const samePart = samePartAs(rung, rungs).filter(spares);
  const found: Omit<Swap, 'position' | 'rungId' | 'tissue'>[] = [
    ...supportsFor(rung, tissue, most).map((support) => ({
      insteadId: rung.id,
      support,
      why: 'on a support',
    })),
    ...easierRungs(rung, samePart).map((other) => ({
      insteadId: other.id,
      support: null,
      why: 'an easier rung',
    })),
    ...otherLadders(rung, samePart).map((other) => ({
      insteadId: other.id,
      support: null,
      why: 'another ladder of the part',
    })),
  ];
  return found.map((swap, position) => ({ ...swap, rungId: rung.id, tissue, position }));
}

/** Supports that fit where the hands are and take enough away. */
function supportsFor(rung: SwapRung, tissue: Tissue, most: number): Support[] {
  const fitting = rung.equipment.includes('hard-floor')
    ? FLOOR_SUPPORTS
    : rung.equipment.includes('bar')
      ? BAR_SUPPORTS
      : [];
  return fitting.filter((support) => (weightsOnSupport(rung.weights, support)[tissue] ?? 0) <= most);
}

function easierRungs(rung: SwapRung, others: readonly SwapRung[]): SwapRung[] {
  return others
    .filter((other) => other.ladderId === rung.ladderId && other.position < rung.position)
    .sort((a, b) => b.position - a.position)
    .slice(0, MOST_EASIER);
}

/** One rung of each other ladder: the one nearest in place, the easier of two. Drills of the same family first. */
function otherLadders(rung: SwapRung, others: readonly SwapRung[]): SwapRung[] {
  const nearest = new Map<string, SwapRung>();
  const distance = (other: SwapRung) => Math.abs(other.position - rung.position);
  for (const other of [...others].sort((a, b) => a.position - b.position)) {
    if (other.ladderId === rung.ladderId) continue;
    const there = nearest.get(other.ladderId);
    if (!there || distance(other) < distance(there)) nearest.set(other.ladderId, other);
  }
  const isOther = ({ family }: SwapRung) => (family === rung.family ? 0 : 1);
  return [...nearest.values()].sort((a, b) => isOther(a) - isOther(b)).slice(0, MOST_OTHER);
}
