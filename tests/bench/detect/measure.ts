import { runChecks } from '#lib/checks/run.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { addDays } from './calendar.ts';
import { FIRST_DAY, type Made, makeClient } from './generator.ts';
import { PLANTED, type Planted } from './planted.ts';
import { draws } from './random.ts';
import { SHEET_RULES } from './spreadsheet.ts';
import type { World } from './worlds.ts';

/** Kinds that are owed or glad, not found: they are no false alarms. */
const NOT_PROBLEMS: CheckKind[] = [
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
  'new-hardest',
];
const FIRST_NIGHT = 28;
const REOPENS_DAYS = 14;

type Raised = { kind: CheckKind; ladder: string | undefined; day: number; until: number };
type Watched = { raised: Raised[]; judged: Map<string, number> };

function isRow(outcome: Outcome): boolean {
  return outcome.status === 'flagged' && outcome.tier !== null;
}

/** Looks at one client every night, with two clear nights to close and a reopening within 14 days that is no new raise. */
export function watch(made: Made): Watched {
  const raised: Raised[] = [];
  const judged = new Map<string, number>();
  const open = new Map<string, { raise: Raised; clear: number }>();
  const closed = new Map<string, { raise: Raised; day: number }>();
  const all = made.history.checkIns;
  let upTo = 0;
  for (let day = FIRST_NIGHT; day < made.days; day += 1) {
    const date = addDays(FIRST_DAY, day);
    while (upTo < all.length && (all[upTo]?.date ?? '') <= date) upTo += 1;
    const history = { ...made.history, checkIns: all.slice(0, upTo) };
    const outcomes = runChecks(history, { date, instant: `${addDays(date, 1)}T02:00:00.000Z` });
    const tonight = new Set<string>();
    for (const outcome of outcomes) {
      if (outcome.status !== 'not-enough-history') judged.set(outcome.kind, day);
      if (outcome.status !== 'flagged' || !isRow(outcome)) continue;
      const key = `${outcome.kind} ${outcome.subject.key}`;
      tonight.add(key);
      const held = open.get(key);
      if (held) {
        held.clear = 0;
        held.raise.until = day;
        continue;
      }
      const before = closed.get(key);
      const raise =
        before && day - before.day <= REOPENS_DAYS
          ? before.raise
          : { kind: outcome.kind, ladder: outcome.subject.ladderId, day, until: day };
      if (raise.day === day) raised.push(raise);
      raise.until = day;
      open.set(key, { raise, clear: 0 });
    }
    for (const [key, held] of open) {
      if (tonight.has(key)) continue;
      held.clear += 1;
      if (held.clear < 2) continue;
      open.delete(key);
      closed.set(key, { raise: held.raise, day });
    }
  }
  return { raised, judged };
}

export type KindResult = {
  planted: Planted;
  cases: number;
  found: number;
  enough: number;
  foundWithEnough: number;
  medianDays: number;
  byChance: number;
};
export type WorldResult = {
  world: string;
  cleanClients: number;
  clientWeeks: number;
  falsePerWeek: number;
  byKind: Map<CheckKind, number>;
  everStalled: number;
  everSideGap: number;
  sheet: { name: string; falsePerWeek: number }[];
  kinds: KindResult[];
};

function hits(
  watched: Watched,
  kind: CheckKind,
  ladder: string | undefined,
  from: number,
  to: number,
): Raised | undefined {
  return watched.raised
    .filter(
      (one) =>
        one.kind === kind &&
        one.day <= to &&
        one.until >= from &&
        (!ladder || !one.ladder || one.ladder === ladder),
    )
    .sort((a, b) => a.day - b.day)[0];
}

function sheetRaises(made: Made, rule: (typeof SHEET_RULES)[number]): number {
  let raises = 0;
  let was = false;
  for (let day = FIRST_NIGHT; day < made.days; day += 1) {
    const is = rule.says(made.history, addDays(FIRST_DAY, day));
    if (is && !was) raises += 1;
    was = is;
  }
  return raises;
}

/** Kinds whose subject names the ladder that the truth is about. */
const BY_LADDER: CheckKind[] = [
  'stalled',
  'slipping',
  'too-little-time',
  'side-gap',
  'one-side-fault',
  'step-up-earned',
];

function measureKind(
  world: World,
  planted: Planted,
  seed: number,
  cases: number,
  days: number,
  clean: Watched[],
): KindResult {
  let [found, enough, foundWithEnough] = [0, 0, 0];
  const times: number[] = [];
  for (let i = 0; i < cases; i += 1) {
    const made = makeClient(world, planted.name, seed + i, days);
    const onset = made.onset ?? 0;
    const watched = watch(made);
    const hit = hits(
      watched,
      planted.kind,
      BY_LADDER.includes(planted.kind) ? made.ladder : undefined,
      onset,
      onset + planted.windowDays,
    );
    const could = (watched.judged.get(planted.kind) ?? -1) >= onset;
    if (could) enough += 1;
    if (!hit) continue;
    found += 1;
    if (could) foundWithEnough += 1;
    times.push(Math.max(0, hit.day - onset));
  }
  const d = draws(seed + 99);
  const chance = clean.filter((watched) => {
    const from = d.int(60, days - planted.windowDays - 1);
    return hits(watched, planted.kind, undefined, from, from + planted.windowDays) !== undefined;
  }).length;
  times.sort((a, b) => a - b);
  return {
    planted,
    cases,
    found,
    enough,
    foundWithEnough,
    medianDays: times[Math.floor(times.length / 2)] ?? Number.NaN,
    byChance: chance / Math.max(1, clean.length),
  };
}

/** The whole table of one world. Seeds above 100,000 are for reports and were never used to choose a rule. */
export function measureWorld(
  world: World,
  options: { seed: number; clean: number; cases: number; days: number; sheet: boolean },
): WorldResult {
  const byKind = new Map<CheckKind, number>();
  const cleanMade = Array.from({ length: options.clean }, (_, i) =>
    makeClient(world, undefined, options.seed + i, options.days),
  );
  const clean = cleanMade.map(watch);
  let total = 0;
  for (const raise of clean.flatMap((watched) => watched.raised)) {
    byKind.set(raise.kind, (byKind.get(raise.kind) ?? 0) + 1);
    if (!NOT_PROBLEMS.includes(raise.kind)) total += 1;
  }
  const clientWeeks = (options.clean * (options.days - FIRST_NIGHT)) / 7;
  const ever = (kind: CheckKind) =>
    clean.filter((watched) => watched.raised.some((raise) => raise.kind === kind)).length / options.clean;
  return {
    world: world.name,
    cleanClients: options.clean,
    clientWeeks,
    falsePerWeek: total / clientWeeks,
    byKind,
    everStalled: ever('stalled'),
    everSideGap: ever('side-gap'),
    sheet: options.sheet
      ? SHEET_RULES.map((rule) => ({
          name: rule.name,
          falsePerWeek: cleanMade.reduce((sum, made) => sum + sheetRaises(made, rule), 0) / clientWeeks,
        }))
      : [],
    kinds:
      options.cases > 0
        ? PLANTED.map((planted, i) =>
            measureKind(world, planted, options.seed + 1000 * (i + 1), options.cases, options.days, clean),
          )
        : [],
  };
}
