import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import { windowsOf } from '#lib/checks/better-since/windows.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { saidDate } from '../say-date.ts';
import { OUTCOME_WORDS } from './step-words.ts';

type Told = { windowDays: number; outcome: SinceOutcome; evidence: { said: string; changes: string[] } };
export type FollowedFrom = { reasonKind: CheckKind | null; from: string; told: readonly Told[] };

export type WindowSaid = {
  windowDays: number;
  outcome: SinceOutcome;
  /** "same after 14 days", "not yet: 28 days are over on Tue 1 Dec". */
  words: string;
  /** What was compared, with the numbers; empty while it is not told. */
  said: string;
  /** "two changes in these weeks: plan version 8 from Tue 3 Nov"; empty: nothing else changed. */
  changes: string;
};

/** Every window of what is followed, the shortest first: told, or still to come. Empty: it is not followed. */
export function windowsSaid(followed: FollowedFrom, today: string, limits: Limits): WindowSaid[] {
  const told = new Map(followed.told.map((one) => [one.windowDays, one]));
  const asked = followed.reasonKind === null ? [] : windowsOf(followed.reasonKind, limits);
  const all = [...new Set([...asked, ...told.keys()])].sort((a, b) => a - b);
  return all.map((windowDays) => {
    const one = told.get(windowDays);
    if (!one) return notYet(windowDays, addDays(followed.from, windowDays), today);
    const { outcome, evidence } = one;
    return {
      windowDays,
      outcome,
      words: `${OUTCOME_WORDS[outcome]} after ${windowDays} days`,
      said: evidence.said,
      changes: changesInWords(evidence.changes),
    };
  });
}

function notYet(windowDays: number, until: string, today: string): WindowSaid {
  const when =
    until < today ? 'the next night tells it' : `${windowDays} days are over on ${saidDate(until, today)}`;
  return { windowDays, outcome: 'not-yet', words: `not yet: ${when}`, said: '', changes: '' };
}

function changesInWords(changes: readonly string[]): string {
  if (changes.length === 0) return '';
  const count = changes.length === 1 ? 'Two changes' : `${changes.length + 1} changes`;
  return `${count} in these weeks: beside this, ${changes.join('; ')}`;
}
