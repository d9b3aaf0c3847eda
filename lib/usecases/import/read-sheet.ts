import { CsvError, parse } from 'csv-parse/sync';
import { AppError } from '#lib/errors.ts';

/** Cells of one row as they were written; `line` is where it begins in the file, the head being line 1. */
export type SheetRow = { line: number; cells: string[] };
export type Sheet = { head: string[]; rows: SheetRow[] };
export type SheetBounds = { rows: number; bytes: number; columns: number };

type Parsed = { record: string[]; info: { lines: number } };

/**
 * Reads a list as RFC 4180 writes it, parted by comma, semicolon or tab, with or without a byte order mark, whatever
 * ends its lines. Refuses what cannot be read whole, with the line and what is wrong there.
 */
export function readSheet(text: string, bounds: SheetBounds): Sheet {
  if (new TextEncoder().encode(text).length > bounds.bytes)
    throw refused(`The list is longer than ${bounds.bytes / 1024 / 1024} MB: send it in parts.`, 'too-large');
  if (text.includes('\uFFFD') || text.includes('\0') || !text.isWellFormed())
    throw refused('The list has signs that cannot be read. Save it as CSV in UTF-8 and choose it again.');
  const [head, ...rest] = records(text);
  if (!head) throw refused('The list is empty: its first line names the columns.');
  if (rest.length === 0) throw refused('The list has a head and no rows below it.');
  if (head.record.length > bounds.columns)
    throw refused(
      `The list has ${head.record.length} columns, at most ${bounds.columns} are read: leave out what is not needed.`,
    );
  if (rest.length > bounds.rows)
    throw refused(`The list has ${rest.length} rows, at most ${bounds.rows} go at once: send it in parts.`);
  return {
    head: head.record,
    rows: rest.map(({ record, info }) => ({ line: info.lines - newlinesIn(record), cells: record })),
  };
}

/** What is wrong with a list as a whole. */
export function refused(message: string, code: 'invalid' | 'too-large' = 'invalid'): AppError {
  return new AppError(code, message, { fields: { text: message } });
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
      .split(/\r\n|\n|\r/, 1)[0] ?? '';
  const bare = head.replaceAll(/"[^"]*"/g, '');
  const counted = [',', ';', '\t'].map((sign) => ({ sign, count: bare.split(sign).length }));
  return counted.sort((a, b) => b.count - a.count)[0]?.sign ?? ',';
}

function newlinesIn(record: string[]): number {
  return record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
}
