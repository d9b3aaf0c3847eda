import { describe, expect, it } from 'vitest';
import { asTexts, inMirror, mirrored, moved, withoutDates } from './mirror.ts';
import { always, said } from './said.ts';

describe('what the checks say about random clients', () => {
  it('is the mirror image for the mirror image, and the same a while later', () => {
    always(({ history, asOf, base }) => {
      const { together } = said(history, asOf);
      expect(differing(inMirror(together), asTexts(said(mirrored(history), asOf).together))).toEqual([]);
      // Answering hours are days of the week: whole weeks for a team that has some.
      const days = (base.seed % 500) * (history.answering ? 7 : 1);
      const [later, evening] = [moved(history, days), moved(asOf, days)];
      const then = withoutDates(said(later, evening).together, evening.date);
      expect(differing(withoutDates(together, asOf.date), then)).toEqual([]);
    });
  }, 120_000);
});

/** What only one of both says. */
function differing(one: readonly string[], other: readonly string[]): string[] {
  if (one.join() === other.join()) return [];
  const only = (these: readonly string[], those: readonly string[]) =>
    these.filter((each) => !those.includes(each));
  return ['said only of the first:', ...only(one, other), 'said only of the second:', ...only(other, one)];
}
