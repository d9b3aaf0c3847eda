import type { HistoryRung } from '#lib/domain/history.ts';
import type { SheetRow } from '../read-sheet.ts';

/** One wording of a drill in the log: how often, an example, and the rung it most likely means. */
export type LogDrill = { word: string; rows: number; example: string; rungId: string | null };

/** Every wording of a drill, the most frequent first. */
export function logDrills(
  rows: readonly SheetRow[],
  at: { drill: number; value: number },
  rungs: readonly Pick<HistoryRung, 'id' | 'name' | 'ladder'>[],
): LogDrill[] {
  const byName = new Map<string, string | null>();
  for (const { id, name, ladder } of rungs) {
    byName.set(foldedWord(`${ladder} ${name}`), id);
    byName.set(foldedWord(`${ladder}: ${name}`), id);
    // A name that two ladders have says nothing.
    byName.set(foldedWord(name), byName.has(foldedWord(name)) ? null : id);
  }
  const drills = new Map<string, LogDrill>();
  for (const { cells } of rows) {
    const word = cells[at.drill] ?? '';
    if (word === '') continue;
    const key = foldedWord(word);
    const there = drills.get(key);
    if (there) there.rows += 1;
    else drills.set(key, { word, rows: 1, example: cells[at.value] ?? '', rungId: byName.get(key) ?? null });
  }
  return [...drills.values()].sort((a, b) => b.rows - a.rows || (a.word < b.word ? -1 : 1));
}

/** Capitals, accents and spacing aside. */
export function foldedWord(text: string): string {
  return text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
