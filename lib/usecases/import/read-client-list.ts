import { CsvError, parse } from 'csv-parse/sync';
import { AppError } from '#lib/errors.ts';
import { columnOf, LIST_COLUMNS, type ListColumn } from '#lib/views/client-list-columns.ts';

/** Own choices: a list of this length is read and looked through in one sitting. */
export const LIST_BOUNDS = { rows: 500, bytes: 1024 * 1024 } as const;

/** A row as it was written; `line` is where it begins in the file, the head being line 1. */
export type ListRow = { line: number; cells: Partial<Record<ListColumn, string>> };
export type ClientList = { columns: ListColumn[]; notRead: string[]; rows: ListRow[] };

type Parsed = { record: string[]; info: { lines: number } };

/**
 * Reads a list as RFC 4180 writes it, parted by comma, semicolon or tab, with or without a byte order mark. Refuses a
 * list that cannot be read whole, with the line and what is wrong there.
 */
export function readClientList(text: string): ClientList {
  if (new TextEncoder().encode(text).length > LIST_BOUNDS.bytes)
    throw refused('The list is longer than 1 MB: send it in parts.', 'too-large');
  const [head, ...rest] = records(text);
  if (!head) throw refused('The list is empty: its first line names the columns.');
  if (rest.length === 0) throw refused('The list has a head and no rows below it.');
  if (rest.length > LIST_BOUNDS.rows)
    throw refused(
      `The list has ${rest.length} rows, at most ${LIST_BOUNDS.rows} go at once: send it in parts.`,
    );
  const columns = head.record.map(columnOf);
  assertColumns(head.record, columns);
  return {
    columns: LIST_COLUMNS.filter((column) => columns.includes(column)),
    notRead: head.record.filter((word, at) => word !== '' && columns[at] === undefined),
    rows: rest.map(({ record, info }) => ({
      line: info.lines - newlinesIn(record),
      cells: cellsOf(record, columns),
    })),
  };
}

function records(text: string): Parsed[] {
  try {
    // With `info` each record comes with the number of the line it ends on.
    return parse(text, {
      bom: true,
      delimiter: delimiterOf(text),
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_empty_values: true,
      trim: true,
    }) as unknown as Parsed[];
  } catch (cause) {
    if (!(cause instanceof CsvError)) throw cause;
    const line = Number(cause.lines ?? 1);
    const fault = FAULTS[cause.code] ?? 'cannot be read as a list';
    throw refused(`Line ${line}: ${fault}.`);
  }
}

const FAULTS: Record<string, string> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark is opened and not closed',
  CSV_INVALID_CLOSING_QUOTE:
    'something follows a closing quotation mark; write a quotation mark inside a cell twice',
  INVALID_OPENING_QUOTE:
    'a quotation mark stands inside a cell; put the whole cell in quotation marks and write it twice',
};

/** The sign that parts the cells of the head; what stands in quotation marks does not count. */
function delimiterOf(text: string): string {
  const head =
    text
      .replace(/^\uFEFF/, '')
      .trimStart()
      .split(/\r?\n/, 1)[0] ?? '';
  const bare = head.replaceAll(/"[^"]*"/g, '');
  const counted = [',', ';', '\t'].map((sign) => ({ sign, count: bare.split(sign).length }));
  return counted.sort((a, b) => b.count - a.count)[0]?.sign ?? ',';
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

function newlinesIn(record: string[]): number {
  return record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
}

function refused(message: string, code: 'invalid' | 'too-large' = 'invalid'): AppError {
  return new AppError(code, message, { fields: { text: message } });
}
