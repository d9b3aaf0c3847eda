import type { CheckKind } from '#lib/domain/vocabulary.ts';
import type { Looked } from './jobs.ts';
import type { Planted } from './planted.ts';
import { draws } from './random.ts';
import { SHEET_RULES } from './spreadsheet.ts';
import { FIRST_NIGHT, type Raised, type Watched } from './watch.ts';

/** Kinds that are owed or glad, or that say what the plan and the sets show by their definition: no false alarms. */
const NOT_PROBLEMS: readonly CheckKind[] = [
  'step-up-earned',
  'plan-ending',
  'not-seen',
  'question-waiting',
  'film-waiting',
  'asked-no-answer',
  'limit-ending',
  'too-many-goals',
  'too-hard',
  'plan-outgrown',
];
/** Kinds whose subject names the ladder that the truth is about. */
const BY_LADDER: readonly CheckKind[] = [
  'stalled',
  'slipping',
  'too-little-time',
  'side-gap',
  'one-side-fault',
  'step-up-earned',
];
const SIX_MONTHS = 182;

export type Clean = {
  clients: number;
  clientWeeks: number;
  falsePerWeek: number;
  perWeek: Partial<Record<CheckKind, number>>;
  /** Share of clients ever called so within the first 26 weeks that are looked at. */
  everStalled: number;
  everSideGap: number;
  /** Raises a client-week of each rule of a spreadsheet. */
  sheet: number[];
};

/** False raises on clients with whom nothing is wrong. */
export function measureClean(looked: readonly Looked[], days: number): Clean {
  const clientWeeks = (looked.length * (days - FIRST_NIGHT)) / 7;
  const perWeek: Clean['perWeek'] = {};
  let problems = 0;
  for (const { kind } of looked.flatMap(({ watched }) => watched.raised)) {
    perWeek[kind] = (perWeek[kind] ?? 0) + 1 / clientWeeks;
    if (!NOT_PROBLEMS.includes(kind)) problems += 1;
  }
  const ever = (kind: CheckKind) =>
    looked.filter(({ watched }) =>
      watched.raised.some((raise) => raise.kind === kind && raise.day < FIRST_NIGHT + SIX_MONTHS),
    ).length / looked.length;
  const nights = (rule: number) => looked.reduce((sum, { sheet }) => sum + (sheet[rule]?.length ?? 0), 0);
  return {
    clients: looked.length,
    clientWeeks,
    falsePerWeek: problems / clientWeeks,
    perWeek,
    everStalled: ever('stalled'),
    everSideGap: ever('side-gap'),
    sheet: SHEET_RULES.map((_, rule) => nights(rule) / clientWeeks),
  };
}

export type Cases = {
  cases: number;
  found: number;
  /** Cases in which the check had enough history on or after the onset, and those found among them. */
  enough: number;
  foundWithEnough: number;
  medianDays: number;
  /** Share of clean clients with the same reason in a window of the same length. */
  byChance: number;
  /** Rules of a spreadsheet kept for this: share found and median days. */
  sheet: { name: string; found: number; medianDays: number }[];
};

/** What was found of one planted condition, and what would have been by chance. */
export function measureCases(
  planted: Planted,
  looked: readonly Looked[],
  clean: readonly Looked[],
  days: number,
): Cases {
  const { kind, windowDays } = planted;
  let enough = 0;
  let foundWithEnough = 0;
  const waited: number[] = [];
  for (const { onset, ladder, watched } of looked) {
    const from = onset ?? 0;
    const about = BY_LADDER.includes(kind) ? ladder : null;
    const hit = firstHit(watched, { kind, ladder: about, from, to: from + windowDays });
    const could = (watched.judged[kind] ?? -1) >= from;
    if (could) enough += 1;
    if (!hit) continue;
    if (could) foundWithEnough += 1;
    waited.push(Math.max(0, hit.day - from));
  }
  const d = draws(windowDays * 7 + 99);
  const chance = clean.filter(({ watched }) => {
    const from = d.int(60, days - windowDays - 1);
    return firstHit(watched, { kind, ladder: null, from, to: from + windowDays }) !== undefined;
  }).length;
  return {
    cases: looked.length,
    found: waited.length,
    enough,
    foundWithEnough,
    medianDays: middle(waited),
    byChance: chance / Math.max(1, clean.length),
    sheet: SHEET_RULES.flatMap((rule, index) =>
      rule.beside.includes(planted.name)
        ? [{ name: rule.name, ...sheetFound(looked, index, windowDays) }]
        : [],
    ),
  };
}

type Wanted = { kind: CheckKind; ladder: string | null; from: number; to: number };

/** The first raise that is open at any time in the window. */
function firstHit(watched: Watched, { kind, ladder, from, to }: Wanted): Raised | undefined {
  return watched.raised
    .filter((one) => one.kind === kind && one.day <= to && one.until >= from)
    .filter((one) => ladder === null || one.ladder === undefined || one.ladder === ladder)
    .sort((a, b) => a.day - b.day)[0];
}

function sheetFound(looked: readonly Looked[], rule: number, windowDays: number) {
  const waited = looked.flatMap(({ onset, sheet }) => {
    const from = onset ?? 0;
    const first = sheet[rule]?.find(({ day, until }) => until >= from && day <= from + windowDays);
    return first === undefined ? [] : [Math.max(0, first.day - from)];
  });
  return { found: waited.length / looked.length, medianDays: middle(waited) };
}

function middle(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
