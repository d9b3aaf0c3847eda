import { readdirSync, readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { bundleTests, type TestBundle } from './bundle.ts';
import type { Mutant } from './mutate.ts';
import { runBundle } from './run-bundle.ts';

// npm run test:mutants -- [--quick] [PART OF A FILE NAME ...]
process.env.TZ = 'Asia/Kathmandu';
const ROOT = resolve(import.meta.dirname, '../..');
const wanted = process.argv.slice(2).filter((argument) => argument !== '--quick');
/** Without the random histories: a minute instead of many, and stricter. */
const quick = process.argv.includes('--quick');

const testFiles = ['tests/unit/checks', 'tests/unit/views', 'tests/published']
  .flatMap((folder) =>
    readdirSync(resolve(ROOT, folder), { recursive: true, encoding: 'utf8' }).map(
      (file) => `${folder}/${file}`,
    ),
  )
  .filter((file) => file.endsWith('.test.ts') && !(quick && cost(file) === 1))
  .sort((a, b) => cost(a) - cost(b) || (a < b ? -1 : 1));

/** Random histories come last: a plain test that sees the mutant is quicker and says more. */
function cost(file: string): number {
  if (file.endsWith('checks/thresholds.test.ts')) return 2;
  return file.includes('/properties/') || file.includes('brute-force') ? 1 : 0;
}

/** Mutants that change nothing anyone could see, each with the reason. */
type Harmless = { file: string; was: string; is: string; because: string };
const harmless: Harmless[] = JSON.parse(readFileSync(resolve(import.meta.dirname, 'harmless.json'), 'utf8'));
const isHarmless = (mutant: Mutant) =>
  harmless.some((one) => one.file === mutant.file && one.was === mutant.was && one.is === mutant.is);

const { bundles, mutants } = await bundleTests(testFiles);
const whole = new Set<TestBundle>();
async function fails(bundle: TestBundle, mutant: number): Promise<boolean> {
  if (!whole.has(bundle)) {
    const failure = await runBundle(bundle, 0);
    if (failure !== null) throw new Error(`${bundle.file} fails with no mutant awake: ${failure}`);
    whole.add(bundle);
  }
  return (await runBundle(bundle, mutant)) !== null;
}

/** The tests that read the mutant's file, the one named like it (a threshold: like its rule) first. */
function testsOf({ file, threshold }: Mutant): TestBundle[] {
  const name = threshold ? kebab(threshold.split('.')[0] ?? '') : basename(file, '.ts');
  const reads = bundles.filter((bundle) => bundle.sources.has(file));
  const first = reads.filter((bundle) => basename(bundle.file).startsWith(`${name}.`));
  // A threshold is asked of its own rule alone, and of the table of defaults, which comes last.
  if (threshold && first.length > 0) return [...first, ...reads.filter(isTable)];
  return [...first, ...reads.filter((bundle) => !first.includes(bundle))];
}

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function isTable({ file }: TestBundle): boolean {
  return file.endsWith('checks/thresholds.test.ts');
}

const perFile = new Map<string, { all: number; seen: number; table: number; harmless: number }>();
const missed: Mutant[] = [];
for (const mutant of mutants) {
  if (wanted.length > 0 && !wanted.some((part) => mutant.file.includes(part))) continue;
  const row = perFile.get(mutant.file) ?? { all: 0, seen: 0, table: 0, harmless: 0 };
  perFile.set(mutant.file, row);
  row.all += 1;
  if (isHarmless(mutant)) {
    row.harmless += 1;
    continue;
  }
  let seen: TestBundle | undefined;
  for (const bundle of testsOf(mutant)) {
    if (!(await fails(bundle, mutant.id))) continue;
    seen = bundle;
    break;
  }
  if (seen) {
    row.seen += 1;
    if (isTable(seen)) row.table += 1;
  } else {
    missed.push(mutant);
    process.stdout.write(
      `not seen  ${mutant.file}:${mutant.line}  ${oneLine(mutant.was)}  →  ${oneLine(mutant.is)}\n`,
    );
  }
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ');
}

for (const [file, { all, seen, table, harmless: equal }] of perFile)
  process.stdout.write(
    `${file}: ${seen} of ${all} seen${table > 0 ? ` (${table} by the table of defaults only)` : ''}${equal > 0 ? `, ${equal} change nothing` : ''}\n`,
  );
process.stdout.write(`${mutants.length} mutants known, ${missed.length} not seen\n`);
process.exit(missed.length > 0 ? 1 : 0);
