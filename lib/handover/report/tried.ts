import type { SinceOutcome } from '#lib/checks/better-since/types.ts';
import { KIND_WORDS } from '#lib/views/board-words.ts';
import { OUTCOME_WORDS, STEP_WORDS } from '#lib/views/steps/step-words.ts';
import type { ReportInput } from './input.ts';
import { day } from './say.ts';

export type Tried = {
  takenOn: string;
  step: string;
  forWhat: string;
  words: string;
  outcome: string;
  undone: boolean;
};

/** Steps taken, the newest first, each with what its windows came to. */
export function stepsOf({ record }: Pick<ReportInput, 'record'>): Tried[] {
  const kinds = new Map(record.reasons.map((reason) => [reason.id, reason.kind]));
  const steps = new Map<string, Tried>();
  for (const row of record.steps) {
    const key = `${row.takenOn} ${row.reasonId} ${row.kind} ${row.words}`;
    const told = row.outcome === null ? '' : `${outcomeWords(row.outcome)} after ${row.windowDays} days`;
    const there = steps.get(key);
    if (there) {
      there.outcome = [there.outcome, told].filter(Boolean).join(', ');
      continue;
    }
    const kind = row.reasonId === null ? undefined : kinds.get(row.reasonId);
    steps.set(key, {
      takenOn: row.takenOn,
      step: wordsIn(STEP_WORDS, row.kind),
      forWhat: kind === undefined ? '' : wordsIn(KIND_WORDS, kind),
      words: row.words,
      outcome: told,
      undone: row.undoneAt !== null,
    });
  }
  return [...steps.values()].reverse();
}

/** One line a step that still stands: "3 Sep 2026: one rung back, for stalled: better after 14 days". */
export function triedLines(input: Pick<ReportInput, 'record'>): string[] {
  return stepsOf(input)
    .filter((one) => !one.undone)
    .map(
      (one) =>
        `${day(one.takenOn)}: ${one.step}${one.forWhat ? `, for ${one.forWhat}` : ''}${one.words ? ` (“${one.words}”)` : ''}: ${one.outcome || 'not measured yet, or not followed'}.`,
    );
}

function outcomeWords(outcome: string): string {
  return wordsIn(OUTCOME_WORDS satisfies Record<SinceOutcome, string>, outcome);
}

function wordsIn(words: Readonly<Record<string, string>>, key: string): string {
  return words[key] ?? key;
}
