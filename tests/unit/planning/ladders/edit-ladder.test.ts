import { describe, expect, it } from 'vitest';
import { editLadder } from '#lib/planning/ladders/edit-ladder.ts';
import type { LadderEdit } from '#lib/planning/ladders/ladder-edit.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { inOrder, numberRungs } from '#lib/planning/ladders/number-rungs.ts';
import { weeksEach } from '#lib/planning/ladders/split-rung.ts';
import { DRILL, ladderOf, MARK, newIds, rungOf } from './ladder-builders.ts';

const three = () => ladderOf([rungOf('a'), rungOf('b'), rungOf('c')]);

function edited(state: LadderState, edit: LadderEdit, used: string[] = []): LadderState {
  const result = editLadder(state, edit, { newId: newIds(), used: new Set(used) });
  if ('wrong' in result) throw new Error(JSON.stringify(result.wrong));
  return result.state;
}
function wrong(state: LadderState, edit: LadderEdit, used: string[] = []): Record<string, string> {
  const result = editLadder(state, edit, { newId: newIds(), used: new Set(used) });
  return 'wrong' in result ? result.wrong : {};
}
const ids = (state: LadderState) => state.rungs.map((rung) => rung.id);
const change = (over: Partial<Extract<LadderEdit, { act: 'rung' }>>): LadderEdit => ({
  act: 'rung',
  rungId: 'a',
  rung: MARK,
  drill: DRILL,
  drillFor: 'all',
  swaps: [],
  ...over,
});

describe('numbers of rungs', () => {
  it('count those in use without a gap; a retired one has the number below it', () => {
    const rungs = [
      rungOf('x', { retired: true }),
      rungOf('a'),
      rungOf('y', { retired: true }),
      rungOf('z', { retired: true }),
      rungOf('b'),
    ];
    expect([...numberRungs(rungs)]).toEqual([
      ['x', 0],
      ['a', 1],
      ['y', 1],
      ['z', 1],
      ['b', 2],
    ]);
  });

  it('in a new order retired ones stay above the rung they stood above', () => {
    const rungs = [rungOf('x', { retired: true }), rungOf('a'), rungOf('y', { retired: true }), rungOf('b')];
    expect(inOrder(rungs, ['b', 'a'])?.map((rung) => rung.id)).toEqual(['x', 'b', 'a', 'y']);
  });

  it.each([[['a']], [['a', 'a']], [['a', 'b', 'b']], [['a', 'nobody']], [['a', 'b', '']]])(
    'an order that does not name each once is none: %j',
    (order) => expect(inOrder([rungOf('a'), rungOf('b')], order)).toBeUndefined(),
  );
});

describe('an edit of a ladder', () => {
  it('puts rungs in order, or says what is wrong', () => {
    expect(ids(edited(three(), { act: 'order', rungIds: ['c', 'a', 'b'] }))).toEqual(['c', 'a', 'b']);
    expect(wrong(three(), { act: 'order', rungIds: ['c', 'a'] })).toHaveProperty('rungIds');
  });

  it('adds a rung above another, at the foot, and on an empty ladder', () => {
    const add = (above: string | null): LadderEdit => ({ act: 'add-rung', above, rung: MARK, drill: DRILL });
    expect(ids(edited(three(), add('a')))).toEqual(['a', 'new-2', 'b', 'c']);
    expect(ids(edited(three(), add(null)))).toEqual(['new-2', 'a', 'b', 'c']);
    const first = edited(ladderOf([]), add(null));
    expect(first.rungs[0]).toMatchObject({ name: 'New', drillId: 'new-1', retired: false });
    expect(first.drills).toMatchObject([{ id: 'new-1', name: 'New', measure: 'hold' }]);
    expect(wrong(three(), add('nobody'))).toHaveProperty('above');
  });

  it('retires a rung and puts it back where it stood; nothing is taken away', () => {
    const without = edited(three(), { act: 'retire-rung', rungId: 'b' });
    expect(without.rungs.map((rung) => [rung.id, rung.retired])).toEqual([
      ['a', false],
      ['b', true],
      ['c', false],
    ]);
    expect(edited(without, { act: 'put-back-rung', rungId: 'b' })).toEqual(three());
    expect(edited(three(), { act: 'retire-ladder' })).toEqual({ ...three(), retired: true });
    expect(wrong(three(), { act: 'retire-rung', rungId: 'nobody' })).toHaveProperty('rungId');
  });

  it('changes a pass mark and leaves the drill as it was', () => {
    const pass = { sets: 5, target: 10, days: 3, tries: null };
    const after = edited(three(), change({ rung: { ...MARK, name: 'Rung a', pass } }));
    expect(after.rungs[0]?.pass).toEqual(pass);
    expect(after.drills.map((drill) => ({ ...drill, name: '' }))).toEqual(
      three().drills.map((drill) => ({ ...drill, name: '' })),
    );
    expect(after.rungs.slice(1)).toEqual(three().rungs.slice(1));
  });

  it('changes a shared drill for all its rungs, or makes one of its own', () => {
    const shared = ladderOf([rungOf('a', { drillId: 'd' }), rungOf('b', { drillId: 'd' })]);
    const drill = { ...DRILL, weights: { 'shoulder-forward': 0.7 } };
    const all = edited(shared, change({ drill }));
    expect(all.drills).toMatchObject([{ id: 'd', weights: { 'shoulder-forward': 0.7 } }]);
    const own = edited(shared, change({ drill, drillFor: 'this' }));
    expect(own.rungs.map((rung) => rung.drillId)).toEqual(['new-1', 'd']);
    expect(own.drills.map((one) => one.weights['shoulder-forward'])).toEqual([0.62, 0.7]);
    const nothing = edited(shared, change({ drillFor: 'this' }));
    expect(nothing.drills).toHaveLength(1);
  });

  it('keeps the measure and the sides of a rung that has results', () => {
    const reps: LadderEdit = change({ drill: { ...DRILL, measure: 'reps', secondsPerRep: 3 } });
    expect(wrong(three(), reps, ['a'])).toHaveProperty('measure');
    expect(wrong(three(), change({ drill: { ...DRILL, eachSide: true } }), ['a'])).toHaveProperty('per');
    expect(edited(three(), reps, ['b']).drills[0]?.measure).toBe('reps');
    const shared = ladderOf([rungOf('a', { drillId: 'd' }), rungOf('b', { drillId: 'd' })]);
    expect(wrong(shared, reps, ['b'])).toHaveProperty('measure');
    expect(edited(shared, { ...reps, drillFor: 'this' } as LadderEdit, ['b']).rungs[0]?.drillId).toBe(
      'new-1',
    );
  });

  it('lets a rung be its own swap on a support only', () => {
    const swap = { insteadId: 'a', tissue: 'wrist-back', support: null, why: '' } as const;
    expect(wrong(three(), change({ swaps: [swap] }))).toHaveProperty('swaps');
    const on = { ...swap, support: 'wedge' } as const;
    expect(edited(three(), change({ swaps: [on] })).rungs[0]?.swaps).toEqual([on]);
  });
});

describe('a split', () => {
  const pass = { sets: 4, target: 6, days: 2, tries: null };
  const split = (steps: { name: string; weight: number | null }[]): LadderEdit => ({
    act: 'split',
    rungId: 'b',
    tissue: 'shoulder-forward',
    steps: steps.map((step) => ({ ...step, pass })),
  });

  it('puts steps below the rung, which stays the same rung and the hardest of them', () => {
    const after = edited(
      three(),
      split([
        { name: 'One', weight: 0.64 },
        { name: 'Two', weight: null },
      ]),
    );
    expect(after.rungs.map((rung) => rung.name)).toEqual(['Rung a', 'One', 'Two', 'Rung b', 'Rung c']);
    expect(after.rungs[3]).toEqual({ ...rungOf('b'), usualWeeks: 1.5 });
    const [one, two] = after.rungs.slice(1, 3);
    expect(after.drills.find((drill) => drill.id === one?.drillId)?.weights).toEqual({
      'shoulder-forward': 0.64,
      'wrist-back': 0.9,
    });
    expect(two?.drillId).toBe('drill-b');
    expect([one?.pass, one?.usualWeeks]).toEqual([pass, 1.5]);
  });

  it('asks for a film at the rung itself only', () => {
    const filmed = ladderOf([rungOf('b', { needsFilm: true })]);
    const after = edited(filmed, split([{ name: 'One', weight: null }]));
    expect(after.rungs.map((rung) => rung.needsFilm)).toEqual([false, true]);
  });

  it('is refused for a retired rung and for none of this ladder', () => {
    const retired = ladderOf([rungOf('a'), rungOf('b', { retired: true })]);
    expect(wrong(retired, split([{ name: 'One', weight: null }])).rungId).toContain('put it back');
    expect(wrong(ladderOf([rungOf('a')]), split([]))).toHaveProperty('rungId');
  });

  it.each([
    [4, 2, 2],
    [5, 2, 2.5],
    [5, 3, 1.5],
    [1, 8, 0.5],
  ])('%d usual weeks in %d steps are %d each', (weeks, count, each) => {
    expect(weeksEach(weeks, count)).toBe(each);
  });
});
