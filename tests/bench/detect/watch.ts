import { runChecks } from '#lib/checks/run.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { addDays } from './calendar.ts';
import { FIRST_DAY, type Made } from './generator.ts';

/** The first four weeks belong to the cold start and are not counted. */
export const FIRST_NIGHT = 28;
const REOPENS_DAYS = 14;
const CLEAR_NIGHTS = 2;

export type Raised = { kind: CheckKind; ladder: string | undefined; day: number; until: number };
export type Watched = {
  raised: Raised[];
  /** The last night on which a kind had enough history to judge. */
  judged: Partial<Record<CheckKind, number>>;
};

/**
 * Looks at one client every night from one day to another: a reason closes after two clear nights, and within 14 days
 * it reopens, which is no new raise.
 */
export function watch(made: Made, from: number, to: number): Watched {
  const raised: Raised[] = [];
  const judged: Watched['judged'] = {};
  const open = new Map<string, { raise: Raised; clear: number }>();
  const closed = new Map<string, { raise: Raised; day: number }>();
  for (let day = Math.max(FIRST_NIGHT, from); day <= Math.min(to, made.days - 1); day += 1) {
    const tonight = new Set<string>();
    for (const outcome of outcomesOf(made, day)) {
      if (outcome.status !== 'not-enough-history') judged[outcome.kind] = day;
      if (outcome.status !== 'flagged' || outcome.tier === null) continue;
      const key = `${outcome.kind} ${outcome.subject.key}`;
      tonight.add(key);
      const held = open.get(key);
      if (held) {
        held.clear = 0;
        held.raise.until = day;
        continue;
      }
      const before = closed.get(key);
      const again = before !== undefined && day - before.day <= REOPENS_DAYS;
      const raise = again
        ? before.raise
        : { kind: outcome.kind, ladder: outcome.subject.ladderId, day, until: day };
      if (!again) raised.push(raise);
      raise.until = day;
      open.set(key, { raise, clear: 0 });
    }
    for (const [key, held] of open) {
      if (tonight.has(key)) continue;
      held.clear += 1;
      if (held.clear < CLEAR_NIGHTS) continue;
      open.delete(key);
      closed.set(key, { raise: held.raise, day });
    }
  }
  return { raised, judged };
}

function outcomesOf(made: Made, day: number): Outcome[] {
  const date = addDays(FIRST_DAY, day);
  const checkIns = made.history.checkIns.filter((one) => one.date <= date);
  return runChecks({ ...made.history, checkIns }, { date, instant: `${addDays(date, 1)}T02:00:00.000Z` });
}
