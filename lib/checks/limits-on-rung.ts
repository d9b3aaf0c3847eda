import type { HistoryLimit, HistoryRung } from '#lib/domain/history.ts';
import type { Side, Tissue } from '#lib/domain/vocabulary.ts';
import type { Limits } from './thresholds.ts';
import { tissuesOfRegion } from './tissues.ts';
import type { ClientView } from './types.ts';

/** Tissues the rung loads enough to count. */
export function loadedTissues(rung: HistoryRung, limits: Limits): Tissue[] {
  return (Object.keys(rung.weights) as Tissue[]).filter(
    (tissue) => (rung.weights[tissue] ?? 0) >= limits['tissue.loaded'],
  );
}

/**
 * Whether a clinician's or coach's limit held for this side of a rung on a date. A limit that names no place holds for
 * all; one on the left says nothing about what the right does alone.
 */
export function isUnderLimit(
  view: ClientView,
  { rung, side }: { rung: HistoryRung; side: Side },
  date: string,
  limits: Limits,
): boolean {
  if (view.history.limits.length === 0) return false;
  return view.history.limits.some(
    (limit) =>
      limit.from <= date &&
      (limit.until === null || limit.until >= date) &&
      isOnSide(limit, side) &&
      limitTouches(limit, { loaded: loadedTissues(rung, limits), upsideDown: rung.upsideDown }),
  );
}

function isOnSide(limit: HistoryLimit, side: Side): boolean {
  const apart = (limit.side === 'left' && side === 'right') || (limit.side === 'right' && side === 'left');
  return !apart;
}

type Touched = { loaded: readonly Tissue[]; upsideDown?: boolean | undefined };

/**
 * Whether a limit speaks about a drill that loads these tissues. One that names no place speaks about all, but for floor,
 * overhead and upside down.
 */
export function limitTouches(limit: HistoryLimit, { loaded, upsideDown }: Touched): boolean {
  if (limit.rule === 'no-upside-down') return upsideDown === true;
  if (limit.rule === 'no-overhead' && loaded.includes('shoulder-overhead')) return true;
  if (limit.rule === 'no-floor' && loaded.includes('wrist-back')) return true;
  if (limit.tissue !== null) return loaded.includes(limit.tissue);
  if (limit.region !== null) return tissuesOfRegion(limit.region).some((tissue) => loaded.includes(tissue));
  return limit.rule === 'none' || limit.rule === 'reduced';
}
