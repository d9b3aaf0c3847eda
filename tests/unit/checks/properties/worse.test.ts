import { describe, expect, it } from 'vitest';
import { compareTiers } from '#lib/checks/urgency.ts';
import type { Outcome } from '#lib/domain/finding.ts';
import { always, flaggedIn, rowFrom, said } from './said.ts';
import { withDanger, withMorePain } from './worse.ts';

describe('worse news about a random client', () => {
  it('never makes the row less urgent', () => {
    let [sorer, endangered] = [0, 0];
    always(({ history, asOf, base }) => {
      const before = said(history, asOf);
      for (const worse of [withMorePain(history, base.seed), withDanger(history, base.seed)])
        if (worse !== history) isNoLessUrgent(before, said(worse, asOf));
      if (withMorePain(history, base.seed) !== history) sorer += 1;
      if (withDanger(history, base.seed) !== history) endangered += 1;
    });
    expect(Math.min(sorer, endangered)).toBeGreaterThan(800);
  }, 120_000);
});

type Said = ReturnType<typeof said>;

/**
 * The row stays in its tier or moves up, its leading reason has no fewer points, and no fewer points are said by the
 * checks one by one. The sum of a merged row alone may be smaller: pain of 6 in a second place takes in what was
 * rising there, and a kind counts once however many places it is about.
 */
function isNoLessUrgent(before: Said, after: Said): void {
  const [was, is] = [rowFrom(before.together), rowFrom(after.together)];
  const words = `${listed(before.together)} -> ${listed(after.together)}`;
  expect(compareTiers(is.tier, was.tier), words).toBeLessThanOrEqual(0);
  if (is.tier === was.tier)
    expect(leadOf(after.together), words).toBeGreaterThanOrEqual(leadOf(before.together));
  expect(rowFrom(after.apart).points, words).toBeGreaterThanOrEqual(rowFrom(before.apart).points);
}

/** Points of the reason that leads the row; 0 for a row of nothing. */
function leadOf(outcomes: readonly Outcome[]): number {
  return flaggedIn(outcomes)[rowFrom(outcomes).lead]?.points ?? 0;
}

function listed(outcomes: readonly Outcome[]): string {
  return flaggedIn(outcomes)
    .map(
      (each) =>
        `${each.kind} ${each.subject.key} ${each.level} ${each.tier} ${each.points}${each.evidence.also ?? ''}`,
    )
    .join(', ');
}
