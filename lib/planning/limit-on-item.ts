import { limitTouches, loadedTissues } from '#lib/checks/limits-on-rung.ts';
import { weightsOnSupport } from '#lib/checks/supports.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { HistoryLimit, HistoryRung } from '#lib/domain/history.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';

/** How much of a planned line is left under a limit: 0 ruled out, 1 all of it; and the limit that decides. */
export type LimitEffect = { share: number; limit: HistoryLimit | null };

const OFF_THE_FLOOR: readonly Support[] = ['parallel-bars', 'rings', 'bar', 'bar-straps'];

type Line = { rung: HistoryRung; side: Side; support?: Support | null | undefined };

/**
 * What the limits in force on a date leave of a line: the strictest that touches a tissue the rung loads (weight 0.3
 * and more on its support) on a side the line works. "Reduced to x %" is x % of the sets; the other rules leave
 * nothing. A line with both sides is held back by a limit on either. No limit: share 1.
 */
export function limitOnItem(
  limits: readonly HistoryLimit[],
  { rung, side, support }: Line,
  date: string,
  numbers: Limits,
): LimitEffect {
  let effect: LimitEffect = { share: 1, limit: null };
  if (limits.length === 0) return effect;
  const onSupport = { ...rung, weights: weightsOnSupport(rung.weights, support ?? null) };
  for (const limit of limits) {
    // Fists and a wedge spare the wrist, but are on the floor all the same.
    const spares = limit.rule !== 'no-floor' || (support && OFF_THE_FLOOR.includes(support));
    const loaded = loadedTissues(spares ? onSupport : rung, numbers);
    const touched = limitTouches(limit, { loaded, upsideDown: rung.upsideDown });
    if (!isInForce(limit, date) || !isOnSide(limit, side) || !touched) continue;
    const share = limit.rule === 'reduced' ? Math.max(0, Math.min(1, (limit.percent ?? 0) / 100)) : 0;
    if (share < effect.share || effect.limit === null) effect = { share, limit };
  }
  return effect;
}

/** Sets left of the planned ones, whole; a part left is at least one set. */
export function setsUnderLimit(sets: number, { share }: LimitEffect): number {
  if (share <= 0) return 0;
  return Math.max(1, Math.round(sets * share));
}

/** From its first day to its last, both included. */
export function isInForce(limit: Pick<HistoryLimit, 'from' | 'until'>, date: string): boolean {
  return limit.from <= date && (limit.until === null || limit.until >= date);
}

/** A limit in the middle, or on no side, holds for both; a line of both sides works each. */
function isOnSide(limit: HistoryLimit, side: Side): boolean {
  if (limit.side === null || limit.side === 'middle' || side === 'both') return true;
  return limit.side === side;
}
