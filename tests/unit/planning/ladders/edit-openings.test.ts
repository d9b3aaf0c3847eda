import { describe, expect, it } from 'vitest';
import { editLadder } from '#lib/planning/ladders/edit-ladder.ts';
import type { OpeningState } from '#lib/planning/ladders/ladder-state.ts';
import { neverOpen } from '#lib/planning/ladders/never-open.ts';
import { ladderOf, newIds, rungOf } from './ladder-builders.ts';

const opening = (over: Partial<OpeningState>): OpeningState => ({
  opens: 'b',
  needsAll: [['elsewhere']],
  orOnSupports: [],
  under18CoachTick: false,
  words: 'words',
  ...over,
});
const state = ladderOf([rungOf('a'), rungOf('b'), rungOf('x', { retired: true }), rungOf('c')]);
const edited = (openings: OpeningState[], of = state) =>
  editLadder(of, { act: 'openings', openings }, { newId: newIds(), used: new Set() });

describe('openings of a ladder', () => {
  it('are kept as given: easier rungs of the ladder and rungs of others', () => {
    const openings = [
      opening({ needsAll: [['a'], ['elsewhere', 'far']] }),
      opening({ opens: 'c', needsAll: [['b']] }),
    ];
    expect(edited(openings)).toEqual({ state: { ...state, openings } });
  });

  it('are refused by field: a rung of another ladder, a retired one, one that stands after, one named twice', () => {
    expect(
      edited([
        opening({ opens: 'elsewhere' }),
        opening({ opens: 'x' }),
        opening({ needsAll: [['a'], ['elsewhere', 'b']] }),
        opening({ needsAll: [['c']] }),
        opening({ needsAll: [['far', 'far']] }),
      ]),
    ).toEqual({
      wrong: {
        'openings.0.opens': expect.stringContaining('not a rung of this ladder'),
        'openings.1.opens': expect.stringContaining('is retired'),
        'openings.2.needsAll.1.1': expect.stringContaining('stands at or after'),
        'openings.3.needsAll.0.0': expect.stringContaining('stands at or after'),
        'openings.4.needsAll.0.1': expect.stringContaining('is named already'),
      },
    });
  });

  it('that were there before their rung was retired stay', () => {
    const openings = [opening({ opens: 'x' })];
    expect(edited(openings, { ...state, openings })).toHaveProperty('state');
  });
});

describe('rungs that never open', () => {
  const ladder = (name: string, openings: Partial<OpeningState>[]) => ({
    rungs: [1, 2, 3].map((position) => ({ id: `${name}${position}`, position })),
    openings: openings.map(opening),
  });

  it('are none where openings ask for what can stand', () => {
    expect(
      neverOpen([
        ladder('p', [{ opens: 'p2', needsAll: [['q3']] }]),
        ladder('q', [{ opens: 'q2', needsAll: [['p1']] }]),
      ]),
    ).toEqual([]);
  });

  it('are those of a circle and all above them', () => {
    const p = ladder('p', [{ opens: 'p2', needsAll: [['q3']] }]);
    const q = ladder('q', [{ opens: 'q2', needsAll: [['p2']] }]);
    expect(neverOpen([p, q])).toEqual(['p2', 'p3', 'q2', 'q3']);
    const [other] = [ladder('q', [{ opens: 'q2', needsAll: [['p2', 'p1']] }])];
    expect(neverOpen([p, other ?? q])).toEqual([]);
    const onWedge = ladder('q', [{ opens: 'q2', needsAll: [['p2']], orOnSupports: ['wedge'] }]);
    expect(neverOpen([p, onWedge])).toEqual([]);
    const gone = ladder('q', [{ opens: 'q2', needsAll: [['a retired rung']] }]);
    expect(neverOpen([p, gone])).toEqual([]);
  });
});
