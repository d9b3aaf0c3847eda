import type { HistoryPain, HistorySet } from '#lib/domain/history.ts';
import type { Fault, PainMoment, PainRegion, PainSide, Side, Support } from '#lib/domain/vocabulary.ts';
import { demoRung } from './rungs.ts';

type Options = {
  side?: Side;
  planned?: number | null;
  support?: Support;
  /** Faults of the set with this place in the list; a set with a fault is not clean. */
  faults?: Partial<Record<number, Fault[]>>;
};

/** Sets done on a rung, one value each (seconds, reps, degrees or cm). */
export function did(key: string, values: number[], options: Options = {}): HistorySet[] {
  const rung = demoRung(key);
  const sides: Side[] = options.side ? [options.side] : rung.eachSide ? ['left', 'right'] : ['both'];
  const planned = options.planned === undefined ? rung.pass.target : options.planned;
  return sides.flatMap((side) =>
    values.map((value, place) => ({
      rungId: rung.id,
      side,
      index: place + 1,
      planned,
      value,
      tried: null,
      how: rung.measure === 'hold' || rung.measure === 'lowering' ? ('timed' as const) : ('typed' as const),
      clean: !options.faults?.[place],
      faults: options.faults?.[place] ?? [],
      support: options.support ?? null,
      addedKg: null,
    })),
  );
}

/** Tries: how many were good, out of how many. */
export function made(key: string, good: number, tried: number, options: Options = {}): HistorySet[] {
  return did(key, [good], { planned: null, ...options }).map((set) => ({ ...set, tried }));
}

/** The same value in every set of the pass mark. */
export function even(key: string, value: number, options: Options & { sets?: number } = {}): HistorySet[] {
  const sets = options.sets ?? demoRung(key).pass.sets;
  return did(
    key,
    Array.from({ length: sets }, () => value),
    { planned: value, ...options },
  );
}

/** A pain score of a joint or tendon. */
export function pain(
  where: readonly [PainRegion, PainSide],
  moment: PainMoment,
  value: number,
  usual = true,
): HistoryPain {
  return { region: where[0], side: where[1], moment, value, kind: 'joint', usual };
}
