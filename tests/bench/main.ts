import { parseArgs } from 'node:util';
import { type BenchRow, machine } from './harness.ts';
import { BENCHES } from './registry.ts';
import { groupsOf, runApart } from './run-apart.ts';

// npm run bench -- [NAME ...] [--json] [--scale 0.1] [--seed 1]
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    json: { type: 'boolean', default: false },
    scale: { type: 'string', default: '1' },
    seed: { type: 'string' },
    help: { type: 'boolean' },
  },
});
const scale = Number(values.scale);
const unknown = positionals.filter((name) => !BENCHES.some((bench) => bench.name === name));
if (values.help || unknown.length > 0 || !(scale > 0)) {
  const lines = BENCHES.map((bench) => `  ${bench.name.padEnd(12)} ${bench.what}`);
  process.stdout.write(
    `${unknown.length ? `No bench is called ${unknown.join(', ')}.\n` : ''}Use: npm run bench -- [NAME ...] [--json] [--scale 0.1] [--seed 1]\n${lines.join('\n')}\n`,
  );
  process.exit(values.help ? 0 : 2);
}

const chosen = positionals.length > 0 ? BENCHES.filter((bench) => positionals.includes(bench.name)) : BENCHES;
const rows: BenchRow[] = [];
const able = chosen.filter((bench) => {
  const missing = bench.missing?.() ?? null;
  if (missing !== null) process.stderr.write(`${bench.name} was not measured: ${missing}\n`);
  return missing === null;
});
let isWhole = positionals.length === 0 || able.length === chosen.length;
const groups = groupsOf(able);
if (groups.length > 1) {
  const seed = values.seed === undefined ? [] : ['--seed', values.seed];
  const apart = runApart(groups, ['--scale', values.scale, ...seed]);
  rows.push(...apart.rows);
  if (apart.failed.length > 0) {
    process.stderr.write(`Not measured: ${apart.failed.join(', ')}\n`);
    isWhole = false;
  }
} else {
  const options = values.seed === undefined ? {} : { seed: Number(values.seed) };
  for (const bench of able) rows.push(...(await bench.run(scale, options)));
}

const shown = (value: number | null) => (value === null ? '-' : String(Number(value.toPrecision(4))));
if (values.json) {
  process.stdout.write(
    `${JSON.stringify(
      rows.map((row) => ({ ...row, machine: machine() })),
      null,
      2,
    )}\n`,
  );
} else {
  const table = rows.map((row) => [
    row.name,
    `${shown(row.value)} ${row.unit}`,
    shown(row.reference),
    shown(row.ratio),
    row.must,
    row.aim,
    row.sizes,
  ]);
  const heads = ['name', 'value', 'reference', 'ratio', 'must', 'aim', 'sizes'];
  const widths = heads.map((head, i) =>
    Math.max(head.length, ...table.map((cells) => (cells[i] ?? '').length)),
  );
  const line = (cells: string[]) =>
    cells
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('  ')
      .trimEnd();
  process.stdout.write(`${[line(heads), ...table.map(line), '', machine()].join('\n')}\n`);
}
process.exit(isWhole ? 0 : 1);
