import { describe, expect, it } from 'vitest';
import { type LoadSeries, loadsOf } from '#lib/checks/load-series.ts';
import { daysWithoutRest } from '#lib/checks/no-let-up-causes.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { compareLevels } from '#lib/checks/urgency.ts';
import { totalUpTo, usualWeek } from '#lib/checks/usual-week.ts';
import { buildView } from '#lib/checks/view.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { always, flaggedIn, keyOf, said } from './said.ts';
import { withRestOn } from './unknown.ts';

const LOAD: readonly CheckKind[] = ['load-jump', 'new-hardest', 'stacked-stress', 'return-too-fast'];

describe('a rest day told by a random client', () => {
  it('raises no load, no total and no load finding', () => {
    let [rests, compared] = [0, 0];
    always(({ history, asOf, base }) => {
      const before = buildView(history, asOf, DEFAULT_LIMITS);
      const unknown = before.days.slice(-14).filter((day) => day.state === 'unknown');
      const date = unknown[base.seed % Math.max(1, unknown.length)]?.date;
      if (date === undefined) return;
      const rested = withRestOn(history, date);
      const after = buildView(rested, asOf, DEFAULT_LIMITS);
      rests += 1;
      raisesNoTotal(before, after);
      expect(daysWithoutRest(after, DEFAULT_LIMITS)).toBeLessThanOrEqual(
        daysWithoutRest(before, DEFAULT_LIMITS),
      );
      // Rest can make an older week known: what is usual then, and what is more than usual, is another question.
      if (usualOf(before) !== usualOf(after)) return;
      compared += 1;
      const [was, is] = [said(history, asOf).apart, said(rested, asOf).apart];
      for (const kind of LOAD) raisesNothing(kind, was, is);
    });
    expect(rests).toBeGreaterThan(400);
    expect(compared).toBeGreaterThan(300);
  }, 120_000);
});

/** 7-day and 28-day totals of the session load and of every tissue, on every evening. */
function raisesNoTotal(before: ClientView, after: ClientView): void {
  const [was, is] = [loadsOf(before), loadsOf(after)];
  const higher = (one: LoadSeries | undefined, other: LoadSeries) =>
    before.days.some((_, end) =>
      [7, 28].some((days) => totalUpTo(other, end, days).total > (one ? totalUpTo(one, end, days).total : 0)),
    );
  expect(higher(was.session, is.session)).toBe(false);
  expect([...is.tissues].filter(([key, series]) => higher(was.tissues.get(key), series))).toEqual([]);
}

function usualOf(view: ClientView): string {
  const { session, tissues } = loadsOf(view);
  return JSON.stringify(
    [session, ...tissues.values()].map((series) => usualWeek(view, series, DEFAULT_LIMITS)),
  );
}

function raisesNothing(kind: CheckKind, before: readonly Outcome[], after: readonly Outcome[]): void {
  const was = new Map(flaggedIn(before).map((each) => [keyOf(each), each]));
  for (const finding of flaggedIn(after).filter((each) => each.kind === kind)) {
    const old = was.get(keyOf(finding));
    expect(old, `${keyOf(finding)}: ${finding.sentence}`).toBeDefined();
    if (old) expect(compareLevels(finding.level, old.level)).toBeLessThanOrEqual(0);
  }
}
