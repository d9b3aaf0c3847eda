import type { Batches } from '#lib/domain/record.ts';
import { type Column, csvPieces } from './csv.ts';

export type NamedTable = { name: string; columns: string[]; pieces: () => AsyncGenerator<string> };
export type Columns<Row> = [string, Column<Row>['value']][];

/** A CSV by its name, its rows and what stands in each column. */
export function table<Row>(name: string, rows: Batches<Row>, columns: Columns<Row>): NamedTable {
  const named = columns.map(([column, value]) => ({ name: column, value }));
  return { name, columns: columns.map(([column]) => column), pieces: () => csvPieces(named, rows) };
}

/** Rows that are held already. */
export function held<Row>(rows: readonly Row[]): Batches<Row> {
  return async function* () {
    yield rows;
  };
}

/** Several words in one cell. */
export function list(words: readonly string[]): string {
  return words.join('; ');
}
