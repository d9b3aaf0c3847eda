import { loadJump } from '#lib/checks/rules/load-jump.ts';
import { stackedStress } from '#lib/checks/rules/stacked-stress.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { Check } from '#lib/checks/types.ts';
import { dayInWords } from '#lib/checks/words.ts';
import type { Level } from '#lib/domain/vocabulary.ts';
import type { ForeseenWeek } from './foreseen-views.ts';

export type ForeseenWarning = {
  kind: 'load-jump' | 'stacked-stress';
  /** Weeks at whose end the check would say it, counted from 1. */
  weeks: number[];
  level: Level;
  /** One sentence for the first of these weeks; the key number between ** **. */
  sentence: string;
  short: string;
  /** 7-day session load at the end of the worst of these weeks, AU, to accept it by; null: not known. */
  weekAu: number | null;
};

const RULES: readonly (Check & { kind: ForeseenWarning['kind'] })[] = [
  { ...loadJump, kind: 'load-jump' },
  { ...stackedStress, kind: 'stacked-stress' },
];

/** What load-jump and stacked-stress would say at the end of each week, one warning a check. */
export function foreseenWarnings(weeks: readonly ForeseenWeek[], limits: Limits): ForeseenWarning[] {
  return RULES.flatMap((rule) => {
    let warning: ForeseenWarning | undefined;
    weeks.forEach(({ view, until }, index) => {
      for (const outcome of rule.evaluate(view, limits)) {
        if (outcome.status !== 'flagged') continue;
        const { weekAu: week } = outcome.evidence;
        const weekAu = typeof week === 'number' ? week : null;
        const { level, short } = outcome;
        const sentence = `Done as planned, by ${dayInWords(until)}: ${foreseen(outcome.sentence)}`;
        warning ??= { kind: rule.kind, weeks: [], level, sentence, short, weekAu };
        warning.weeks.push(index + 1);
        if (level === 'act') warning.level = 'act';
        if (weekAu !== null) warning.weekAu = Math.max(weekAu, warning.weekAu ?? 0);
      }
    });
    return warning ? [warning] : [];
  });
}

/** The words of the check, as the rest of a sentence, without the count of days that are not over yet. */
function foreseen(sentence: string): string {
  const without = sentence.replace(/; \d+ of \d+ days known\.$/, '.');
  return without.replace(/^(The|Load) /, (word) => word.toLowerCase());
}
