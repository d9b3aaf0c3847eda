import { describe, expect, it } from 'vitest';
import { asTold, withVerdict, worstVerdict } from '#lib/domain/clip-verdict.ts';
import type { Fault } from '#lib/domain/vocabulary.ts';
import { aSet } from '#tests/fixtures/history-builders.ts';

const told = (faults: Fault[]) => aSet({ clean: faults.length === 0, faults });

describe('a set seen on film', () => {
  it('counts as not clean with the faults of both, in one order', () => {
    const seen = withVerdict(told(['ribs-open']), {
      verdict: 'not-clean',
      faults: ['hips-turn', 'ribs-open'],
    });
    expect(seen).toMatchObject({ clean: false, faults: ['hips-turn', 'ribs-open'] });
    expect(seen.onFilm?.told).toEqual({ clean: false, faults: ['ribs-open'] });
  });

  it('counts as clean without what the client named, but for what only they can feel', () => {
    expect(withVerdict(told(['ribs-open']), { verdict: 'clean', faults: [] })).toMatchObject({
      clean: true,
      faults: [],
    });
    expect(
      withVerdict(told(['ribs-open', 'stopped-by-pain']), { verdict: 'clean', faults: [] }),
    ).toMatchObject({ clean: false, faults: ['stopped-by-pain'] });
  });

  it('stays as told where it could not be seen', () => {
    const set = told(['ribs-open']);
    const seen = withVerdict(set, { verdict: 'cannot-see', faults: [] });
    expect(seen).toEqual({ ...set, onFilm: { verdict: 'cannot-see', faults: [], told: expect.anything() } });
  });

  it('goes back to what was told, and a newer verdict stands alone', () => {
    const set = told(['ribs-open']);
    const first = withVerdict(set, { verdict: 'not-clean', faults: ['hips-turn'] });
    const second = withVerdict(first, { verdict: 'clean', faults: [] });
    expect(second).toMatchObject({ clean: true, faults: [] });
    for (const seen of [set, first, second]) expect(asTold(seen)).toEqual(set);
  });

  it('of several sets is the worst that was seen', () => {
    expect(worstVerdict([])).toBeNull();
    expect(worstVerdict(['cannot-see'])).toBe('cannot-see');
    expect(worstVerdict(['cannot-see', 'clean'])).toBe('clean');
    expect(worstVerdict(['clean', 'not-clean', 'cannot-see'])).toBe('not-clean');
  });
});
