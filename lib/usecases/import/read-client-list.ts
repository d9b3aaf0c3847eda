import { columnOf, LIST_COLUMNS, type ListColumn } from '#lib/views/client-list-columns.ts';
import { readSheet, refused } from './read-sheet.ts';

/** Own choices: a list of this length is read and looked through in one sitting. */
export const LIST_BOUNDS = { rows: 500, bytes: 1024 * 1024, columns: 100 } as const;

/** A row as it was written; `line` is where it begins in the file, the head being line 1. */
export type ListRow = { line: number; cells: Partial<Record<ListColumn, string>> };
export type ClientList = { columns: ListColumn[]; notRead: string[]; rows: ListRow[] };

/**
 * Reads a list of clients. Refuses a list that cannot be read whole, with the line and what is wrong there.
 */
export function readClientList(text: string): ClientList {
  const { head, rows } = readSheet(text, LIST_BOUNDS);
  const columns = head.map(columnOf);
  assertColumns(head, columns);
  return {
    columns: LIST_COLUMNS.filter((column) => columns.includes(column)),
    notRead: head.filter((word, at) => word !== '' && columns[at] === undefined),
    rows: rows.map(({ line, cells }) => ({ line, cells: cellsOf(cells, columns) })),
  };
}

function assertColumns(head: string[], columns: (ListColumn | undefined)[]): void {
  if (!columns.includes('name'))
    throw refused(
      `Line 1: no column is called “name”. Found: ${head.map((word) => `“${word}”`).join(', ')}. The first line names the columns.`,
    );
  const twice = LIST_COLUMNS.find((column) => columns.filter((one) => one === column).length > 1);
  if (!twice) return;
  const words = head.filter((_, at) => columns[at] === twice).map((word) => `“${word}”`);
  throw refused(`Line 1: ${words.join(' and ')} both mean “${twice}”. Keep one of them.`);
}

function cellsOf(record: string[], columns: (ListColumn | undefined)[]): ListRow['cells'] {
  const cells: ListRow['cells'] = {};
  for (const [at, column] of columns.entries()) if (column) cells[column] = record[at] ?? '';
  return cells;
}
