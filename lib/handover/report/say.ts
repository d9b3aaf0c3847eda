import { dateInWords } from '#lib/checks/words.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { plainSentence } from '#lib/views/sentence.ts';
import type { Block, ReportColumn, TableBlock } from './blocks.ts';

export const heading = (level: 1 | 2 | 3, text: string): Block => ({ kind: 'heading', level, text });
export const text = (said: string, tone?: 'lead' | 'small' | 'own-words'): Block => ({
  kind: 'text',
  text: plainSentence(said),
  ...(tone && { tone }),
});
export const list = (items: readonly string[]): Block[] =>
  items.length === 0 ? [] : [{ kind: 'list', items: items.map(plainSentence) }];

/** A column of numbers ends with `#`. */
export function table(
  caption: string,
  source: string,
  names: readonly string[],
  rows: string[][],
  note?: string,
): TableBlock {
  const columns = names.map(
    (name): ReportColumn => (name.endsWith('#') ? { name: name.slice(0, -1), numeric: true } : { name }),
  );
  return { kind: 'table', caption, source, columns, rows, ...(note && { note }) };
}

/** The table, or one sentence where it would be empty. */
export function tableOr(empty: string, block: TableBlock): Block {
  return block.rows.length > 0 ? block : text(`${block.caption}: ${empty}`);
}

export const day = (date: string | null): string => (date === null ? '' : dateInWords(date));

/** The local date of an instant, in words. */
export function dayOf(instant: string | null, zone: string): string {
  return instant === null ? '' : dateInWords(localDateOf(new Date(instant), zone));
}

export const number = (value: number | null | undefined): string =>
  value === null || value === undefined ? '' : String(value);

/** The newest `most`, and how many more there are. */
export function newest<Item>(items: readonly Item[], most: number): { shown: Item[]; more: number } {
  return { shown: items.slice(-most).reverse(), more: Math.max(0, items.length - most) };
}
