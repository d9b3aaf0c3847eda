import { SINCE_OUTCOMES, type SinceOutcome } from '#lib/checks/better-since/types.ts';
import { windowsOf } from '#lib/checks/better-since/windows.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from '../board-words.ts';
import { saidDate } from '../say-date.ts';
import { type Counted, type CountsSaid, countOutcomes, countsSaid } from './count-outcomes.ts';
import { OUTCOME_WORDS, STEP_WORDS } from './step-words.ts';

export type Followed = {
  id: string;
  clientId: string;
  clientName: string;
  reasonKind: CheckKind | null;
  stepKind: keyof typeof STEP_WORDS;
  from: string;
  told: readonly { windowDays: number; outcome: SinceOutcome; evidence: { changes: readonly string[] } }[];
};

export type Who = { key: string; clientId: string; name: string; when: string; besides: boolean };
export type OverviewRow = {
  key: string;
  /** "Stalled, after 28 days", or "One rung back". */
  title: string;
  taken: CountsSaid;
  /** The same figure where nothing was done; what is not over yet is not in it. */
  alone: CountsSaid;
  /** By outcome, in order; empty ones left out. */
  who: { words: string; people: Who[] }[];
};
export type StepsOverview = {
  taken: Counted;
  alone: Counted;
  clients: number;
  byReason: OverviewRow[];
  byStep: OverviewRow[];
  /** "step up 12, answered 3": taken, and nothing is measured of them. Empty: none. */
  notFollowed: string;
  /** Of the steps with an answer, those in whose weeks something else changed too. */
  besides: number;
};

type Answer = Followed & { outcome: SinceOutcome; windowDays: number; besides: boolean };

/**
 * Steps taken in a period, and reasons of the same period for which nothing was done: how many were better, the same or
 * worse at the end of each window. By kind of reason every window stands apart; by kind of step, and in the sums, each
 * counts once, with its longest window that is over.
 */
export function stepsOverview({
  steps,
  alone,
  today,
}: {
  steps: readonly Followed[];
  alone: readonly Followed[];
  today: string;
}): StepsOverview {
  const followed = steps.filter((step) => windowsFor(step.reasonKind).length > 0);
  const latest = followed.map(latestOf);
  const latestAlone = alone.map(latestOf);
  return {
    taken: countOutcomes(latest.map((one) => one.outcome)),
    alone: countOutcomes(latestAlone.map((one) => one.outcome)),
    clients: new Set(followed.map((step) => step.clientId)).size,
    byReason: CHECK_KINDS.flatMap((kind) => rowsOfKind(kind, { steps: followed, alone, today })),
    byStep: Object.entries(STEP_WORDS).flatMap(([kind, words]) => {
      const mine = latest.filter((one) => one.stepKind === kind);
      const others = latestAlone.filter((one) => one.stepKind === kind);
      return mine.length === 0 && others.length === 0
        ? []
        : [rowOf(kind, asSentence(words), mine, others, today)];
    }),
    notFollowed: notFollowed(steps),
    besides: latest.filter((one) => one.besides && one.outcome !== 'not-yet').length,
  };
}

type Periods = { steps: readonly Followed[]; alone: readonly Followed[]; today: string };

function rowsOfKind(kind: CheckKind, { steps, alone, today }: Periods): OverviewRow[] {
  const mine = steps.filter((step) => step.reasonKind === kind);
  const others = alone.filter((reason) => reason.reasonKind === kind);
  if (mine.length === 0 && others.length === 0) return [];
  const told = [...mine, ...others].flatMap((one) => one.told.map((each) => each.windowDays));
  const windows = [...new Set([...windowsFor(kind), ...told])].sort((a, b) => a - b);
  return windows.map((days) =>
    rowOf(
      `${kind} ${days}`,
      `${asSentence(KIND_WORDS[kind])}, after ${days} days`,
      mine.map((step) => after(step, days)),
      others.map((reason) => after(reason, days)).filter((one) => one.outcome !== 'not-yet'),
      today,
    ),
  );
}

function rowOf(key: string, title: string, taken: Answer[], alone: Answer[], today: string): OverviewRow {
  return {
    key,
    title,
    taken: countsSaid(countOutcomes(taken.map((one) => one.outcome))),
    alone: countsSaid(countOutcomes(alone.map((one) => one.outcome))),
    who: SINCE_OUTCOMES.flatMap((outcome) => {
      const people = taken.filter((one) => one.outcome === outcome);
      return people.length === 0
        ? []
        : [{ words: OUTCOME_WORDS[outcome], people: people.map((one) => whoOf(one, today)) }];
    }),
  };
}

function whoOf({ id, clientId, clientName, from, besides }: Answer, today: string): Who {
  return { key: id, clientId, name: clientName, when: saidDate(from, today), besides };
}

function after(followed: Followed, windowDays: number): Answer {
  const told = followed.told.find((one) => one.windowDays === windowDays);
  return {
    ...followed,
    windowDays,
    outcome: told?.outcome ?? 'not-yet',
    besides: (told?.evidence.changes.length ?? 0) > 0,
  };
}

function latestOf(followed: Followed): Answer {
  return after(followed, followed.told.at(-1)?.windowDays ?? 0);
}

function notFollowed(steps: readonly Followed[]): string {
  const counts = new Map<string, number>();
  for (const { reasonKind, stepKind } of steps) {
    if (windowsFor(reasonKind).length === 0) counts.set(stepKind, (counts.get(stepKind) ?? 0) + 1);
  }
  return [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([kind, count]) => `${STEP_WORDS[kind as keyof typeof STEP_WORDS] ?? kind} ${count}`)
    .join(', ');
}

/** Whether a kind is followed at all does not depend on the settings, only over how many days. */
function windowsFor(kind: CheckKind | null): number[] {
  return kind === null ? [] : windowsOf(kind, DEFAULT_LIMITS);
}

/** The last day of the longest window of anything followed from `from`: until then some answers are still to come. */
export function allOverOn(from: string): string {
  return addDays(from, Math.max(...CHECK_KINDS.flatMap((kind) => windowsFor(kind))));
}
