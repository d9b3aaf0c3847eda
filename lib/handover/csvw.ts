import { TISSUES } from '#lib/domain/vocabulary.ts';
import { COLUMN_MEANINGS, type ColumnMeaning, type ColumnType } from './column-meanings.ts';

type Table = { name: string; columns: readonly string[] };

const DATATYPES: Record<ColumnType, unknown> = {
  text: 'string',
  date: { base: 'date', format: 'yyyy-MM-dd' },
  instant: { base: 'dateTime', format: "yyyy-MM-dd'T'HH:mm:ss.SSSX" },
  whole: 'integer',
  number: 'number',
  'yes-no': { base: 'boolean', format: 'yes|no' },
  list: 'string',
};
/** Tables whose lines can be named by one column. */
const KEYS: Readonly<Record<string, string>> = {
  'check_ins.csv': 'check_in_id',
  'reasons.csv': 'reason_id',
  'load_by_day.csv': 'date',
  'load_by_week.csv': 'to',
  'rungs.csv': 'rung_id',
};

/** The data dictionary of the tables as CSV on the Web metadata (W3C): each column with its meaning, datatype and unit. */
export function csvwMetadata(tables: readonly Table[]): Record<string, unknown> {
  return {
    '@context': ['http://www.w3.org/ns/csvw', { '@language': 'en' }],
    'dc:title': 'Tables of a handover pack',
    dialect: {
      encoding: 'utf-8',
      header: true,
      delimiter: ',',
      quoteChar: '"',
      doubleQuote: true,
      lineTerminators: ['\r\n'],
    },
    tables: tables.map(({ name, columns }) => ({
      url: `tables/${name}`,
      tableSchema: {
        columns: columns.map(columnOf),
        ...(KEYS[name] && { primaryKey: KEYS[name] }),
        ...(columns.includes('check_in_id') &&
          !KEYS[name] && { foreignKeys: [reference('check_in_id', 'check_ins.csv')] }),
      },
    })),
  };
}

function columnOf(name: string): Record<string, unknown> {
  const [type, meaning, unit] = meaningOf(name);
  return {
    name,
    titles: name,
    'dc:description': unit ? `${meaning}. Unit: ${unit}.` : `${meaning}.`,
    datatype: DATATYPES[type],
    null: '',
    ...(type === 'list' && { separator: '; ' }),
    ...(unit && { 'schema:unitText': unit }),
  };
}

/** The meaning of a column; those of tissues are made from the tissue's name. */
export function meaningOf(name: string): ColumnMeaning {
  const known = COLUMN_MEANINGS[name];
  if (known) return known;
  const tissue = TISSUES.find((one) => name.includes(one.replaceAll('-', '_')));
  if (tissue && name.startsWith('stress_')) return ['number', `Stress of the rung for: ${tissue}, 0-1`];
  if (tissue && name.endsWith('_bw_s')) {
    return [
      'number',
      `Load of the day on: ${tissue}, ${name.includes('_left_') ? 'left' : 'right'}; empty: unknown`,
      'BW s',
    ];
  }
  throw new Error(`the column ${name} has no meaning: add it to column-meanings.ts`);
}

function reference(column: string, table: string) {
  return { columnReference: column, reference: { resource: `tables/${table}`, columnReference: column } };
}
