import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Side } from '#lib/domain/vocabulary.ts';

export type SetChoice = { rungId: string; side: Side; index: number; label: string };

export type NamedSet = { rung: string; side: Side; number: number };

/** One set by its name: "Tuck planche left, set 2". */
export function setInWords(set: NamedSet): string {
  return `${set.rung}${set.side === 'both' ? '' : ` ${set.side}`}, set ${set.number}`;
}

/** The sets of one drill and side, each with its index and what was told: short, as it travels to a browser. */
export type DrillSets = { rungId: string; side: Side; rung: string; told: [index: number, value: string][] };

/** The sets of a check-in by drill and side, in the order of their index. */
export function drillSets(
  sets: readonly HistorySet[],
  rungs: ReadonlyMap<string, Pick<HistoryRung, 'name' | 'measure'>>,
): DrillSets[] {
  const groups = new Map<string, DrillSets>();
  for (const set of [...sets].sort((a, b) => a.index - b.index)) {
    const { rungId, side } = set;
    const rung = rungs.get(rungId);
    const group = groups.get(`${rungId} ${side}`) ?? {
      rungId,
      side,
      rung: rung?.name ?? 'A drill',
      told: [],
    };
    group.told.push([set.index, told(set, rung?.measure)]);
    groups.set(`${rungId} ${side}`, group);
  }
  return [...groups.values()].sort((a, b) => (a.rungId === b.rungId ? 0 : a.rungId < b.rungId ? -1 : 1));
}

/** Each set to choose one from: "Tuck planche left, set 2: 8 s". */
export function setChoices(drills: readonly DrillSets[]): SetChoice[] {
  return drills.flatMap(({ rungId, side, rung, told }) =>
    told.map(([index, value], at) => ({
      rungId,
      side,
      index,
      label: `${setInWords({ rung, side, number: at + 1 })}: ${value}`,
    })),
  );
}

function told(set: HistorySet, measure: HistoryRung['measure'] | undefined): string {
  const value = set.value ?? (set.how === 'as-planned' ? set.planned : null);
  if (set.how === 'not-done' || value === null) return 'not done';
  const unit = measure ? MEASURE_UNITS[measure] : '';
  return `${value}${unit ? ` ${unit}` : ''}`;
}
