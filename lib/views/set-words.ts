import type { HistoryRung, HistorySet } from '#lib/domain/history.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { Side } from '#lib/domain/vocabulary.ts';

export type SetChoice = { rungId: string; side: Side; index: number; label: string };

/** One set by its name: "Tuck planche left, set 2". */
export function setInWords(set: { rung: string; side: Side; number: number }): string {
  return `${set.rung}${set.side === 'both' ? '' : ` ${set.side}`}, set ${set.number}`;
}

/** The sets of a check-in to choose one from, as they were told: "Tuck planche left, set 2: 8 s". */
export function setChoices(
  sets: readonly HistorySet[],
  rungs: ReadonlyMap<string, Pick<HistoryRung, 'name' | 'measure'>>,
): SetChoice[] {
  const counts = new Map<string, number>();
  return [...sets]
    .sort((a, b) => a.index - b.index)
    .map((set) => {
      const { rungId, side, index } = set;
      const number = (counts.get(`${rungId} ${side}`) ?? 0) + 1;
      counts.set(`${rungId} ${side}`, number);
      const rung = rungs.get(rungId);
      const name = setInWords({ rung: rung?.name ?? 'A drill', side, number });
      return { rungId, side, index, label: `${name}: ${told(set, rung?.measure)}` };
    })
    .sort((a, b) => (a.rungId === b.rungId ? 0 : a.rungId < b.rungId ? -1 : 1));
}

function told(set: HistorySet, measure: HistoryRung['measure'] | undefined): string {
  const value = set.value ?? (set.how === 'as-planned' ? set.planned : null);
  if (set.how === 'not-done' || value === null) return 'not done';
  const unit = measure ? MEASURE_UNITS[measure] : '';
  return `${value}${unit ? ` ${unit}` : ''}`;
}
