import { once } from 'node:events';
import type { Writable } from 'node:stream';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import type { FindingRow } from '#lib/schemas/finding-row.ts';
import { oneLine } from './unreadable.ts';

export type FindingsWriter = {
  write: (rows: readonly FindingRow[]) => Promise<void>;
  /** Closes what was begun, so that it can be read even when not all histories could (`allRead` false). */
  end: (allRead: boolean) => Promise<void>;
};
export type FindingsFormat = 'lines' | 'json' | 'table';

/** Writes findings as they come and waits whenever the reader is behind: nothing is gathered. */
export function findingsWriter(output: Writable, format: FindingsFormat): FindingsWriter {
  let written = 0;
  let clientWidth = 'client'.length;
  const put = async (text: string) => {
    if (!output.write(text)) await once(output, 'drain');
  };
  const textOf = (row: FindingRow): string => {
    written += 1;
    if (format === 'lines') return `${JSON.stringify(row)}\n`;
    if (format === 'json') return `${written === 1 ? '[\n' : ',\n'}${JSON.stringify(row)}`;
    clientWidth = Math.max(clientWidth, oneLine(row.client).length);
    const heads = written === 1 ? tableLine(['date', 'client', 'when', 'kind', 'what'], clientWidth) : '';
    return `${heads}${tableLine([row.date, row.client, row.tier ?? 'note', row.kind, row.sentence], clientWidth)}`;
  };
  return {
    write: async (rows) => {
      for (const row of rows) await put(textOf(row));
    },
    end: async (allRead) => {
      if (format === 'json') await put(written === 0 ? '[]\n' : '\n]\n');
      if (format === 'table' && written === 0 && allRead) await put('Nothing found.\n');
    },
  };
}

const KIND_WIDTH = Math.max(...CHECK_KINDS.map((kind) => kind.length));

/** Widths are known beforehand, but for the client: a wider name moves the column from there on. */
function tableLine(cells: readonly string[], clientWidth: number): string {
  const widths = ['2026-11-24'.length, clientWidth, 'good-news'.length, KIND_WIDTH, 0];
  return `${cells
    .map((cell, i) => oneLine(cell).padEnd(widths[i] ?? 0))
    .join('  ')
    .trimEnd()}\n`;
}
