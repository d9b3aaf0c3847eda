import fc from 'fast-check';
import { CHECKS } from '#lib/checks/registry.ts';
import { settle } from '#lib/checks/settle.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { rowOf } from '#lib/checks/urgency.ts';
import { buildView } from '#lib/checks/view.ts';
import type { AsOf, Flagged, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { anyLife, type Case, told } from './any-history.ts';

/** One run judges one client by all 28 checks, so that it counts as a run for each of them. */
const RUNS = 1_000;
/** Fixed, so that the same clients are judged every time; a failure names its seed and path. */
const SEED = 20_261_125;

/** Holds a property against a thousand random clients; a failure shows the stories of the smallest one found. */
export function always(holds: (one: Case) => void): void {
  fc.assert(
    fc.property(anyLife, (life) => holds(told(life))),
    { numRuns: RUNS, seed: SEED },
  );
}

/** What the checks say one by one, and what they say together. */
export function said(history: ClientHistory, asOf: AsOf): { apart: Outcome[]; together: Outcome[] } {
  const view = buildView(history, asOf, DEFAULT_LIMITS);
  const apart = CHECKS.flatMap((check) => check.evaluate(view, DEFAULT_LIMITS));
  return { apart, together: settle(view, apart, DEFAULT_LIMITS) };
}

export function flaggedIn(outcomes: readonly Outcome[]): Flagged[] {
  return outcomes.filter((each): each is Flagged => each.status === 'flagged');
}

/** The client's row when tonight's findings are its open reasons. */
export function rowFrom(outcomes: readonly Outcome[]) {
  return rowOf(flaggedIn(outcomes).map((each) => ({ ...each, raisedAt: '' })));
}

export function keyOf({ kind, subject }: Outcome): string {
  return `${kind} ${subject.key}`;
}

/** Outcomes of one side that are not byte for byte on the other; empty when both say the same in the same order. */
export function apartFrom(one: readonly Outcome[], other: readonly Outcome[]): string[] {
  const [left, right] = [one.map((each) => JSON.stringify(each)), other.map((each) => JSON.stringify(each))];
  if (left.join() === right.join()) return [];
  const differing = (a: string[], b: string[]) => a.filter((each) => !b.includes(each));
  return ['said otherwise:', ...differing(left, right), '---', ...differing(right, left)];
}
