import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asEntered, type Column, csvPieces, harmless } from '#lib/handover/csv.ts';
import { held } from '#lib/handover/table.ts';

type Row = { words: string; amount: number | null; told: boolean };
const COLUMNS: Column<Row>[] = [
  { name: 'words', value: (row) => row.words },
  { name: 'amount_kg', value: (row) => row.amount },
  { name: 'told', value: (row) => row.told },
];
const PAYLOADS = [
  '=1+1',
  '=cmd|" /C calc"!A0',
  '=HYPERLINK("http://x.example","click")',
  '=IMPORTXML("http://x.example","//a")',
  '=WEBSERVICE("http://x.example")',
  '+1+1',
  '+cmd|x!A1',
  '-1+1',
  '-2-cmd|x!A1',
  '@SUM(1,1)',
  '@x',
  '\t=1+1',
  '\tplain',
  '\r=1+1',
  '\rplain',
  '\0=1+1',
  '\0plain',
  ' =1+1',
  '  +1',
  '\u00A0=1+1',
  '\uFEFF=1+1',
  '\n=1+1',
  '\n-1',
  '\uFF1D1+1',
  '\uFF0B1+1',
  '\uFF0D1+1',
  '\uFF20SUM(1)',
  ' \uFF1D1+1',
  "'=1+1",
  '"=1+1"\t=2',
];
const HARMLESS_AS_THEY_ARE = new Set(['"=1+1"\t=2']);

async function text(rows: Row[]): Promise<string> {
  let written = '';
  for await (const piece of csvPieces(COLUMNS, held(rows))) written += piece;
  return written;
}
const read = (csv: string): string[][] => parse(csv, { bom: true, relax_column_count: false });

test('thirty payloads: no cell begins as a formula, and each comes back as entered', async () => {
  expect(PAYLOADS).toHaveLength(30);
  const cells = read(await text(PAYLOADS.map((words) => ({ words, amount: null, told: true }))))
    .slice(1)
    .map((row) => row[0] ?? '');
  expect(cells).toHaveLength(30);
  for (const [index, cell] of cells.entries()) {
    expect(cell).not.toMatch(/^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r\0]/);
    expect(asEntered(cell)).toBe(PAYLOADS[index]);
  }
  const touched = PAYLOADS.filter((words) => harmless(words) !== words);
  expect(touched).toHaveLength(PAYLOADS.length - HARMLESS_AS_THEY_ARE.size);
});

test('numbers are not touched, also below zero', async () => {
  expect(await text([{ words: 'x', amount: -5.25, told: false }])).toBe(
    '\uFEFFwords,amount_kg,told\r\nx,-5.25,no\r\n',
  );
});

test('a table without rows is its header', async () => {
  expect(await text([])).toBe('\uFEFFwords,amount_kg,told\r\n');
});

test('any text survives the way out and back', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.string({ unit: 'binary', maxLength: 12 }), { maxLength: 6 }),
      async (all) => {
        const cells = read(await text(all.map((words) => ({ words, amount: 1, told: true }))));
        expect(cells.slice(1).map((row) => asEntered(row[0] ?? ''))).toEqual(all);
      },
    ),
  );
});

test('more rows than one piece holds', async () => {
  const rows = Array.from({ length: 1201 }, (_, index) => ({ words: 'a,"b"\nc', amount: index, told: true }));
  expect(
    read(await text(rows))
      .slice(1)
      .map((row) => Number(row[1])),
  ).toEqual(rows.map((row) => row.amount));
});
