import { stringify } from 'csv-stringify/sync';
import type { Batches } from '#lib/domain/record.ts';

export type Cell = string | number | boolean | null | undefined;
/** One column: its name carries the unit, its value is a number (left alone) or text (made harmless). */
export type Column<Row> = { name: string; value: (row: Row) => Cell };

const ROWS_AT_ONCE = 500;
const BYTE_ORDER_MARK = '\uFEFF';
// Leading quotes count too, so that taking off exactly one ' gives the text back, whatever it was.
const FORMULA = /^'*\s*[=+\-@\t\r\0\uFF1D\uFF0B\uFF0D\uFF20]/;

/** Text that a spreadsheet would run as a formula gets a ' in front; other text stays as it is. */
export function harmless(text: string): string {
  return FORMULA.test(text) ? `'${text}` : text;
}

/** Takes off the ' that `harmless` put in front. */
export function asEntered(text: string): string {
  return text.startsWith("'") && FORMULA.test(text) ? text.slice(1) : text;
}

/** RFC 4180 with CRLF, UTF-8 with byte order mark, header first; in pieces, so that it can be streamed. */
export async function* csvPieces<Row>(
  columns: readonly Column<Row>[],
  batches: Batches<Row>,
): AsyncGenerator<string> {
  yield BYTE_ORDER_MARK + lines([columns.map((column) => column.name)]);
  for await (const rows of batches()) {
    for (let start = 0; start < rows.length; start += ROWS_AT_ONCE) {
      const slice = rows.slice(start, start + ROWS_AT_ONCE);
      yield lines(slice.map((row) => columns.map((column) => cell(column.value(row)))));
    }
  }
}

function lines(records: string[][]): string {
  return stringify(records, { record_delimiter: '\r\n', quoted_match: /[\r\n\0]/ });
}

function cell(value: Cell): string {
  if (value === null || value === undefined) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  return harmless(value);
}
