import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { buildView } from '#lib/checks/view.ts';
import { csvwMetadata, meaningOf } from '#lib/handover/csvw.ts';
import { loadDays } from '#lib/handover/load-days.ts';
import { recordTables } from '#lib/handover/tables.ts';
import { weeksOf } from '#lib/handover/weeks.ts';
import { aCheckIn, aHistory, aRestDay, day, sets } from '#tests/fixtures/history-builders.ts';
import { heldRecord, recordOf } from '#tests/fixtures/pack-content.ts';
import { demoContent } from './demo-pack.ts';

const { history } = demoContent();
const days = loadDays(history);
const tables = recordTables({
  record: heldRecord(recordOf(history)),
  days,
  weeks: weeksOf(history, days, '2026-11-25'),
  rungs: history.rungs,
  zone: 'Asia/Tokyo',
  notes: true,
});

test('every column has a meaning, a datatype and, where it measures, a unit', () => {
  for (const { name, columns } of tables) {
    expect(new Set(columns).size, name).toBe(columns.length);
    for (const column of columns) {
      const [type, meaning, unit] = meaningOf(column);
      expect(meaning.length, column).toBeGreaterThan(2);
      if (/_(kg|s|au|minutes|hours|days)$/.test(column) && type !== 'text')
        expect(unit, column).toBeDefined();
    }
  }
  expect(() => meaningOf('no_such_column')).toThrow('column-meanings.ts');
});

/** What a cell of a datatype looks like in these tables. */
const LOOKS: Record<string, RegExp> = {
  date: /^\d{4}-\d{2}-\d{2}$/,
  dateTime: /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}\.\d{3}Z$/,
  integer: /^-?\d+$/,
  number: /^-?\d+(\.\d+)?$/,
  boolean: /^(yes|no)$/,
  string: /./s,
};

test('every cell is of the datatype that csv-metadata.json says, keys are unique, references lead somewhere', async () => {
  const metadata = csvwMetadata(tables) as {
    tables: {
      url: string;
      tableSchema: { columns: { name: string; datatype: string | { base: string } }[]; primaryKey?: string };
    }[];
  };
  let cells = 0;
  const ids = new Set<string>();
  for (const { url, tableSchema } of metadata.tables) {
    let csv = '';
    const table = tables.find((one) => url === `tables/${one.name}`);
    for await (const piece of table?.pieces() ?? []) csv += piece;
    const rows: Record<string, string>[] = parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' });
    for (const { name, datatype } of tableSchema.columns) {
      const base = typeof datatype === 'string' ? datatype : datatype.base;
      for (const row of rows) {
        const cell = row[name] ?? '';
        if (cell !== '') expect(cell, `${url} ${name}`).toMatch(LOOKS[base] ?? /$^/);
        cells += 1;
      }
    }
    const key = tableSchema.primaryKey;
    if (key) expect(new Set(rows.map((row) => row[key])).size, url).toBe(rows.length);
    if (url.endsWith('check_ins.csv')) for (const row of rows) ids.add(row.check_in_id ?? '');
    else for (const row of rows) if (row.check_in_id) expect(ids.has(row.check_in_id), url).toBe(true);
  }
  expect(cells).toBeGreaterThan(10_000);
});

test('days are rest, taken as rest, off or unknown as the checks say it', () => {
  const some = aHistory({
    checkIns: [
      aCheckIn(0),
      aCheckIn(2),
      aCheckIn(4),
      aRestDay(6),
      aCheckIn(9),
      aCheckIn(20),
      aCheckIn(22),
      aCheckIn(24),
    ],
    absences: [{ from: day(12), to: day(14), kind: 'holiday' }],
  });
  const view = buildView(some, { date: day(24), instant: `${day(25)}T02:00:00.000Z` });
  const here = loadDays(some);
  expect(here.map(({ date, state }) => [date, state])).toEqual(view.days.map((one) => [one.date, one.state]));
  expect(here.filter((one) => one.state === 'unknown').every((one) => one.sessionLoadAu === null)).toBe(true);
});

test('a week: sums of its known days; sets and seconds by hand; nothing known is no zero', () => {
  const one = aHistory({ checkIns: [aCheckIn(0), aCheckIn(2, { sets: sets([5, 5, 0]) }), aCheckIn(20)] });
  const { load, tissues } = weeksOf(one, loadDays(one), day(20));
  expect(load.map((week) => [week.to, week.knownDays, week.sessionLoadAu])).toEqual([
    [day(6), 3, 600],
    [day(13), 0, null],
    [day(20), 1, 300],
  ]);
  const elbow = tissues.filter((row) => row.tissue === 'elbow-bending' && row.side === 'left');
  // 3 + 3 sets of 5, 5, 5 and 5, 5, 0 pull-ups of 4 s each: 60 + 40 s; weight 0.8, half of body weight on each hand.
  expect(elbow[0]).toMatchObject({ sets: 6, hardSets: 6, seconds: 100, bodyWeightSeconds: 40 });
});
