import { windowsOf } from '#lib/checks/better-since/windows.ts';
import { runChecks } from '#lib/checks/run.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import type { HistoryStep } from '#lib/domain/history.ts';
import { addDays } from './calendar.ts';
import type { DemoClient } from './life.ts';

/** A reason of the months before the first night of the demo. */
export type PastReason = {
  outcome: Flagged;
  /** The evening from which it was known, and the evening on which it had gone; null: it had not, by then. */
  knownFrom: string;
  goneOn: string | null;
  /** The step that was taken for it. */
  step: HistoryStep | undefined;
};

const LOOK_EVERY_DAYS = 7;
const FIRST_LOOK_DAYS = 28;
/** A reason that is gone for less may come back in the nights that the demo runs: those raise it themselves. */
const SETTLED_DAYS = 15;

/**
 * What the nights before the first one of the demo would have told, looked at once a week, and on the evenings before a
 * step: reasons that were left alone and went, and reasons for which a step was taken. Only kinds that are followed.
 */
export function pastReasons({ history }: DemoClient, firstNight: string): PastReason[] {
  const steps = history.steps.filter((step) => step.kind !== 'step-up-earned');
  const open = new Map<string, PastReason>();
  const all: PastReason[] = [];
  for (const date of looks(history, steps, firstNight)) {
    const asOf = { date, instant: `${addDays(date, 1)}T03:00:00.000Z` };
    const flagged = new Map(
      runChecks(history, asOf)
        .filter((each): each is Flagged => each.status === 'flagged')
        .filter((each) => each.tier !== null && windowsOf(each.kind, DEFAULT_LIMITS).length > 0)
        .map((each) => [`${each.kind} ${each.subject.key}`, each]),
    );
    for (const [key, past] of open) {
      if (flagged.has(key)) continue;
      past.goneOn = date;
      open.delete(key);
    }
    for (const [key, outcome] of flagged) {
      if (open.has(key)) continue;
      const past: PastReason = { outcome, knownFrom: date, goneOn: null, step: undefined };
      open.set(key, past);
      all.push(past);
    }
    for (const past of open.values()) past.step ??= steps.find((step) => isFor(step, past.outcome, date));
  }
  const settled = addDays(firstNight, -SETTLED_DAYS);
  return all.filter(({ goneOn, step }) => step !== undefined || (goneOn !== null && goneOn <= settled));
}

/** Weekly evenings up to the first night, and those around each step. */
function looks(history: DemoClient['history'], steps: readonly HistoryStep[], firstNight: string): string[] {
  const begun = history.checkIns.map((checkIn) => checkIn.date).sort()[0];
  if (begun === undefined) return [];
  const dates = new Set(steps.flatMap((step) => [addDays(step.takenOn, -1), step.takenOn]));
  for (let date = addDays(begun, FIRST_LOOK_DAYS); date < firstNight; date = addDays(date, LOOK_EVERY_DAYS))
    dates.add(date);
  return [...dates].sort();
}

function isFor(step: HistoryStep, { kind, subject }: Flagged, date: string): boolean {
  const sameLadder =
    step.ladderId === null || subject.ladderId === undefined || subject.ladderId === step.ladderId;
  return step.kind === kind && sameLadder && (date === step.takenOn || date === addDays(step.takenOn, -1));
}
