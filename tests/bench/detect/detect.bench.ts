import type { Bench, BenchRow } from '../harness.ts';
import type { Job, Looked } from './jobs.ts';
import { type Cases, type Clean, measureCases, measureClean } from './measure.ts';
import { PLANTED, type Planted } from './planted.ts';
import { runAll } from './pool.ts';
import { SHEET_RULES } from './spreadsheet.ts';
import { WORLDS } from './worlds.ts';

const DAYS = 34 * 7;
/** Seeds of reports; rules were looked at on seeds below 100,000 only. */
const REPORT_SEED = 700_000;
const CASES = 200;
const CLEAN = 400;
const CLEAN_ELSEWHERE = 120;
const A_JOB = 20;

type Figure = Pick<BenchRow, 'name' | 'value' | 'unit' | 'better' | 'must' | 'aim' | 'sizes'>;

function figure(row: Figure): BenchRow {
  return { ...row, name: `detect ${row.name}`, reference: null, ratio: null };
}

function cleanRows(world: string, clean: Clean, isDefault: boolean): BenchRow[] {
  const sizes = `${clean.clients} clean clients, ${Math.round(clean.clientWeeks)} client-weeks`;
  const rows = [
    figure({
      name: `${world}: false raises, all checks`,
      value: clean.falsePerWeek,
      unit: 'a client-week',
      better: 'lower',
      must: isDefault ? '0.06' : '0.10',
      aim: isDefault ? '0.02' : '0.04',
      sizes,
    }),
    share(
      `${world}: clean client ever called stalled in 26 weeks`,
      clean.everStalled,
      'lower',
      '10 %',
      '5 %',
      sizes,
    ),
    share(
      `${world}: clean client ever called side-gap in 26 weeks`,
      clean.everSideGap,
      'lower',
      '5 %',
      '2 %',
      sizes,
    ),
  ];
  if (!isDefault) return rows;
  const each = Object.entries(clean.perWeek).sort(([a], [b]) => (a < b ? -1 : 1));
  for (const [kind, value] of each)
    rows.push(
      figure({
        name: `raises of ${kind}`,
        value,
        unit: 'a client-week',
        better: 'lower',
        must: '-',
        aim: '-',
        sizes,
      }),
    );
  SHEET_RULES.forEach(({ name }, rule) => {
    const value = clean.sheet[rule] ?? 0;
    const row = { name: `spreadsheet, ${name}: false raises`, value, unit: 'a client-week' };
    rows.push(figure({ ...row, better: 'lower', must: '-', aim: '-', sizes }));
  });
  return rows;
}

function share(
  name: string,
  value: number,
  better: BenchRow['better'],
  must: string,
  aim: string,
  sizes: string,
): BenchRow {
  return figure({ name, value: Math.round(value * 1000) / 10, unit: '%', better, must, aim, sizes });
}

function caseRows({ name, kind, must, aim, mustDays }: Planted, found: Cases): BenchRow[] {
  const sizes = `${found.cases} cases, ${found.enough} with enough history`;
  const days = { better: 'lower', aim: '-', unit: 'days', sizes } as const;
  const title = `${name} (${kind})`;
  return [
    share(
      `${title} found, enough history`,
      found.foundWithEnough / Math.max(1, found.enough),
      'higher',
      `${must} %`,
      `${aim} %`,
      sizes,
    ),
    share(`${title} found, all`, found.found / found.cases, 'higher', '-', '-', sizes),
    figure({ ...days, name: `${title} days to find`, value: found.medianDays, must: mustDays ?? '-' }),
    // Steps that clean clients earn are earned: no chance in it.
    ...(kind === 'step-up-earned'
      ? []
      : [share(`${title} by chance`, found.byChance, 'lower', '8 %', '3 %', sizes)]),
    ...found.sheet.flatMap((rule) => [
      share(`${title} found by spreadsheet, ${rule.name}`, rule.found, 'higher', '-', '-', sizes),
      figure({
        ...days,
        name: `${title} days to find by spreadsheet, ${rule.name}`,
        value: rule.medianDays,
        must: '-',
      }),
    ]),
  ];
}

function jobsOf(job: Omit<Job, 'days'>): Job[] {
  const jobs: Job[] = [];
  for (let done = 0; done < job.count; done += A_JOB)
    jobs.push({ ...job, seed: job.seed + done, count: Math.min(A_JOB, job.count - done), days: DAYS });
  return jobs;
}

export const detectBench: Bench = {
  name: 'detect',
  what: 'what the checks find and miss, on generated histories with a known truth',
  run: async (scale, options) => {
    const seed = options.seed ?? REPORT_SEED;
    const sized = (count: number, least: number) => Math.max(least, Math.round(count * scale));
    const parts: { jobs: Job[]; rows: (looked: Looked[], clean: Looked[]) => BenchRow[] }[] = [];
    WORLDS.forEach(({ name }, world) => {
      const count = sized(world === 0 ? CLEAN : CLEAN_ELSEWHERE, 10);
      parts.push({
        jobs: jobsOf({ world, planted: null, seed: seed + world * 10_000, count }),
        rows: (looked) => cleanRows(name, measureClean(looked, DAYS), world === 0),
      });
    });
    PLANTED.forEach((planted, index) => {
      const from = seed + 200_000 + index * 1000;
      parts.push({
        jobs: jobsOf({ world: 0, planted: planted.name, seed: from, count: sized(CASES, 5) }),
        rows: (looked, clean) => caseRows(planted, measureCases(planted, looked, clean, DAYS)),
      });
    });
    const results = await runAll(parts.flatMap((part) => part.jobs));
    let at = 0;
    const looked = parts.map(({ jobs }) => {
      const from = at;
      at += jobs.length;
      return results.slice(from, at).flat();
    });
    return parts.flatMap(({ rows }, part) => rows(looked[part] ?? [], looked[0] ?? []));
  },
};
