import type { Bench, BenchRow } from '../harness.ts';
import { measureWorld, type WorldResult } from './measure.ts';
import { WORLDS } from './worlds.ts';

const DAYS = 34 * 7;
/** Seeds of reports; rules were looked at on seeds below 100,000 only. */
const REPORT_SEED = 700_000;

function rowsOf(result: WorldResult): BenchRow[] {
  const row = (
    name: string,
    value: number,
    unit: string,
    better: 'lower' | 'higher',
    must: string,
    aim: string,
    sizes: string,
  ): BenchRow => ({
    name: `detect ${result.world}: ${name}`,
    value,
    unit,
    reference: null,
    ratio: null,
    better,
    must,
    aim,
    sizes,
  });
  const clean = `${result.cleanClients} clean clients, ${Math.round(result.clientWeeks)} client-weeks`;
  const rows = [
    row(
      'false raises',
      result.falsePerWeek,
      'per client-week',
      'lower',
      result.world === 'default' ? '0.06' : '0.10',
      result.world === 'default' ? '0.02' : '0.04',
      clean,
    ),
    row('ever called stalled', result.everStalled * 100, '%', 'lower', '10 %', '5 %', clean),
    row('ever called side-gap', result.everSideGap * 100, '%', 'lower', '5 %', '2 %', clean),
  ];
  for (const [kind, count] of [...result.byKind].sort())
    rows.push(
      row(`raises of ${kind}`, count / result.clientWeeks, 'per client-week', 'lower', '-', '-', clean),
    );
  for (const rule of result.sheet)
    rows.push(
      row(`spreadsheet: ${rule.name}`, rule.falsePerWeek, 'per client-week', 'lower', '-', '-', clean),
    );
  for (const kind of result.kinds) {
    const sizes = `${kind.cases} cases, ${kind.enough} with enough history`;
    rows.push(
      row(
        `${kind.planted.name} found, enough history`,
        (100 * kind.foundWithEnough) / Math.max(1, kind.enough),
        '%',
        'higher',
        `${kind.planted.must} %`,
        '-',
        sizes,
      ),
    );
    rows.push(
      row(`${kind.planted.name} found, all`, (100 * kind.found) / kind.cases, '%', 'higher', '-', '-', sizes),
    );
    rows.push(row(`${kind.planted.name} days to find`, kind.medianDays, 'days', 'lower', '-', '-', sizes));
    rows.push(row(`${kind.planted.name} by chance`, 100 * kind.byChance, '%', 'lower', '8 %', '3 %', clean));
  }
  return rows;
}

export const detectBench: Bench = {
  name: 'detect',
  what: 'what the checks find and miss, on generated histories with a known truth',
  run: (scale) => {
    const cases = Math.max(5, Math.round(200 * scale));
    const rows = WORLDS.flatMap((world, i) =>
      rowsOf(
        measureWorld(world, {
          seed: REPORT_SEED + i * 50_000,
          clean: Math.max(10, Math.round((i === 0 ? 480 : 160) * scale)),
          cases: i === 0 ? cases : 0,
          days: DAYS,
          sheet: i === 0,
        }),
      ),
    );
    return Promise.resolve(rows);
  },
};
