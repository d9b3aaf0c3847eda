import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { AsOf, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { CHECK_KINDS, type CheckKind } from '#lib/domain/vocabulary.ts';
import { always, flaggedIn, keyOf, said } from './said.ts';
import { laterOf, withBareTraining, withoutEffort } from './unknown.ts';

/**
 * Days alone end these: a limit is over on its day, a return after two weeks, and fading is held against two months
 * of which the silent days become a part. Good news may go.
 */
const ENDED_BY_DAYS: readonly CheckKind[] = ['limit-ending', 'return-too-fast', 'fading', 'step-up-earned'];
/** They ask what the plan in force asks: a plan that ended asks nothing. */
const ASK_THE_PLAN: readonly CheckKind[] = [
  'too-many-goals',
  'too-hard',
  'plan-outgrown',
  'stalled',
  'too-little-time',
];
/** About effort and minutes, or about what hurts: a bare training tells its sets, and that it was there. */
const LEFT_OUT_OF_BARE: readonly CheckKind[] = [
  'danger-sign',
  'pain-high',
  'pain-rising',
  'pain-lingering',
  'pain-after-ground',
  'load-jump',
  'no-let-up',
];

describe('what is not known about a random client', () => {
  it('clears nothing', () => {
    const proven = new Map<CheckKind, number>();
    const clearsNone = (kinds: readonly CheckKind[], before: Outcome[], after: Outcome[], how: string) => {
      const clear = new Set(after.filter(isClearForSure).map(keyOf));
      const asked = flaggedIn(before).filter(({ kind }) => kinds.includes(kind));
      expect(
        asked.map(keyOf).filter((key) => clear.has(key)),
        how,
      ).toEqual([]);
      for (const { kind } of asked) proven.set(kind, (proven.get(kind) ?? 0) + 1);
    };
    always(({ history, asOf, base }) => {
      const tonight = said(history, asOf).apart;
      const days = 1 + (base.seed % 24);
      const later = laterOf(asOf, days);
      const bare = base.seed % 3 === 0;
      const kinds = (bare ? LEFT_OUT_OF_BARE : CHECK_KINDS).filter(
        (kind) =>
          !ENDED_BY_DAYS.includes(kind) && (!ASK_THE_PLAN.includes(kind) || samePlan(history, asOf, later)),
      );
      // Days off were said: they are known.
      const off = history.absences.some(({ to }) => to === null || to > asOf.date);
      const then = said(bare ? withBareTraining(history, asOf, days) : history, later).apart;
      if (!off) clearsNone(kinds, tonight, then, `${bare ? 'bare training' : 'silence'} for ${days} days`);
      const less = withoutEffort(history, asOf, base.seed);
      if (less !== history) clearsNone(CHECK_KINDS, tonight, said(less, asOf).apart, 'without an effort');
    });
    const often = CHECK_KINDS.filter((kind) => (proven.get(kind) ?? 0) >= 10);
    expect(CHECK_KINDS.filter((kind) => !often.includes(kind))).toEqual([]);
  }, 120_000);
});

function isClearForSure(outcome: Outcome): boolean {
  return outcome.status === 'clear' && !outcome.lowerBound;
}

function samePlan(history: ClientHistory, tonight: AsOf, later: AsOf): boolean {
  const { planOn } = buildView({ ...history, checkIns: [] }, later, DEFAULT_LIMITS);
  return planOn(tonight.date) === planOn(later.date);
}
