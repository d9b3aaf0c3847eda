import type { GapLadder, GapRung, SideSeen } from './gap-types.ts';
import { shareOfPass } from './standing-of-part.ts';

/**
 * The rung to train on: the one the last result was on; the next one when that met the pass mark clean; the lowest when
 * nothing is known. Undefined for a ladder without rungs.
 */
export function trainingRung(ladder: GapLadder, seen: SideSeen | undefined): GapRung | undefined {
  const on = ladder.rungs.find((one) => one.id === seen?.rungId);
  if (!on || !seen) return ladder.rungs[0];
  const passed = seen.clean !== false && (shareOfPass(on, seen) ?? 0) >= 1 && seen.film !== 'drops';
  return passed ? (rungAfter(ladder, on) ?? on) : on;
}

export function rungBefore(ladder: GapLadder, rung: GapRung): GapRung | undefined {
  return ladder.rungs[ladder.rungs.findIndex((one) => one.id === rung.id) - 1];
}

function rungAfter(ladder: GapLadder, rung: GapRung): GapRung | undefined {
  return ladder.rungs[ladder.rungs.findIndex((one) => one.id === rung.id) + 1];
}

/** Whether a client stands on a rung or beyond: no and yes only as far as it is known. */
export function hasPassed(
  ladder: GapLadder,
  rung: GapRung,
  sides: readonly SideSeen[],
): 'yes' | 'no' | 'not-known' {
  const each = sides.map((seen) => passedOnSide(ladder, rung, seen));
  if (each.includes('no')) return 'no';
  return each.length === 0 || each.includes('not-known') ? 'not-known' : 'yes';
}

function passedOnSide(ladder: GapLadder, rung: GapRung, seen: SideSeen): 'yes' | 'no' | 'not-known' {
  const on = ladder.rungs.find((one) => one.id === seen.rungId);
  if (!on) return seen.film === 'steady' ? 'yes' : seen.film === 'drops' ? 'no' : 'not-known';
  if (on.position !== rung.position) return on.position > rung.position ? 'yes' : 'no';
  return (shareOfPass(on, seen) ?? 0) >= 1 && seen.clean !== false ? 'yes' : 'no';
}
