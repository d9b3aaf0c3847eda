import { type Factor, loadPerSecond, setSeconds } from '#lib/checks/exposure.ts';
import type { HistorySet } from '#lib/domain/history.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';
import type { GapRung } from './gap-types.ts';

/** One line of a drill: a rung on one side, or with both. */
export type DrillLine = {
  rung: GapRung;
  side: Side;
  sets: number;
  target: number | null;
  minutes: number | null;
};

/** Load a second of a rung on each tissue and side, share of body weight x weight; sides without load left out. */
export function factorsOf(
  { rung, side }: Pick<DrillLine, 'rung' | 'side'>,
  support: Support | null,
  bodyMassKg: number | null,
): Factor[] {
  return loadPerSecond(asSet(rung, side, 0), rung, support, bodyMassKg);
}

/** Seconds under load of a line in one session. Ranges and minutes of practice count none. */
export function secondsOf({ rung, side, sets, target }: DrillLine): number {
  return target === null ? 0 : sets * setSeconds(asSet(rung, side, target), rung);
}

function asSet(rung: GapRung, side: Side, value: number): HistorySet {
  return {
    rungId: rung.id,
    side,
    index: 1,
    planned: null,
    value,
    tried: rung.measure === 'made-tried' ? (rung.pass.tries ?? value) : null,
    how: 'typed',
    clean: true,
    faults: [],
    support: null,
    addedKg: null,
  };
}
