import { describe, expect, it } from 'vitest';
import type { Ask, SideSeen } from '#lib/planning/gaps/gap-types.ts';
import { standingOfPart, standingOfSide } from '#lib/planning/gaps/standing-of-part.ts';
import { GAP_LIBRARY, seen } from '#tests/fixtures/gap-library.ts';

function ask(id: string): Ask {
  for (const ladder of GAP_LIBRARY) {
    const rung = ladder.rungs.find((one) => one.id === id);
    if (rung) return { ladder, rung, role: 'part', why: '' };
  }
  throw new Error(id);
}
const stands = (id: string, over: Partial<SideSeen>) => standingOfSide(ask(id), seen(over));

// H4.3 asks 4 x 10 s, U1.5 asks 5 x 5 reps, H1.3 asks 8 made of 10 tries, X2.3 asks 90 degrees, X4.2 at most 30 cm.
describe('from a result', () => {
  it.each([
    ['the pass mark', { sets: 4, value: 10, clean: true }, 'covered', 1],
    ['more than the pass mark', { sets: 6, value: 25, clean: true }, 'covered', 1],
    ['three quarters', { sets: 3, value: 10, clean: true }, 'near', 0.75],
    ['just under three quarters', { sets: 4, value: 7.4, clean: true }, 'open', 0.74],
    ['clean not said', { sets: 4, value: 10 }, 'covered', 1],
    ['not clean', { sets: 4, value: 10, clean: false }, 'near', 1],
    ['no result yet', {}, 'open', undefined],
  ] as const)('%s', (_, over, standing, share) => {
    const found = stands('H4.3', { rungId: 'H4.3', ...over });
    expect(found.standing).toBe(standing);
    expect(found).toMatchObject({ share: share === undefined ? undefined : expect.closeTo(share, 10) });
    expect(found.rungsBelow).toBe(0);
  });
  it('sets left empty count as those of the pass mark', () => {
    expect(stands('H4.3', { rungId: 'H4.3', value: 10 }).standing).toBe('covered');
  });
  it('a harder rung covers, an easier one is open with its distance', () => {
    expect(stands('H4.3', { rungId: 'H4.5', value: 1 }).standing).toBe('covered');
    expect(stands('H4.3', { rungId: 'H4.1', sets: 2, value: 10, clean: true })).toMatchObject({
      standing: 'open',
      rungsBelow: 2,
      words: '2 rungs below, on Toe pull, chest to wall, off and back',
    });
  });
  it('tries: good ones per try', () => {
    const made = (value: number, sets: number | null) =>
      stands('H1.3', { rungId: 'H1.3', value, sets, clean: true });
    expect(made(8, 10)).toMatchObject({ standing: 'covered', share: 1 });
    expect(made(4, 5)).toMatchObject({ standing: 'covered', share: 1 });
    expect(made(6, null)).toMatchObject({ standing: 'near', share: 0.75 });
    expect(made(5, 10).standing).toBe('open');
  });
  it('ranges: reached, within the error of measuring, short; less is better where it goes down', () => {
    const bends = (value: number) => stands('X2.3', { rungId: 'X2.3', value });
    expect(bends(90)).toMatchObject({ standing: 'covered', share: 1 });
    expect(bends(80)).toMatchObject({ standing: 'near', share: undefined });
    expect(bends(79.9).standing).toBe('open');
    const folds = (value: number) => stands('X4.2', { rungId: 'X4.2', value });
    expect(folds(30).standing).toBe('covered');
    expect(folds(35)).toMatchObject({ standing: 'near', words: '35 cm of 30 cm: 5 cm short' });
    expect(folds(36).standing).toBe('open');
  });
  it('tells the numbers', () => {
    expect(stands('H4.3', { rungId: 'H4.3', sets: 4, value: 6, clean: true }).words).toBe(
      '4 x 6 s of 4 x 10 s: 60 % of the pass mark',
    );
  });
});

describe('from film and pain', () => {
  it('film alone', () => {
    expect(stands('H4.3', { film: 'steady' }).standing).toBe('covered');
    expect(stands('H4.3', { film: 'hurried' }).standing).toBe('near');
    expect(stands('H4.3', { film: 'drops' }).standing).toBe('open');
    expect(stands('H4.3', {}).standing).toBe('not-known');
  });
  it('takes away from a result, never adds', () => {
    const done = { rungId: 'H4.3', sets: 4, value: 10, clean: true };
    expect(stands('H4.3', { ...done, film: 'hurried' }).standing).toBe('near');
    expect(stands('H4.3', { ...done, film: 'drops' }).standing).toBe('open');
    expect(stands('H4.3', { ...done, value: 2, film: 'steady' }).standing).toBe('open');
    expect(stands('H4.3', { ...done, pain: 2 }).standing).toBe('covered');
    expect(stands('H4.3', { ...done, pain: 3 }).standing).toBe('near');
  });
  it('the worse side decides; one side not known is not covered', () => {
    const part = (left: Partial<SideSeen>, right: Partial<SideSeen>) =>
      standingOfPart(ask('OA.4'), [seen({ ...left, side: 'left' }), seen({ ...right, side: 'right' })])
        .standing;
    expect(part({ film: 'steady' }, { film: 'drops' })).toBe('open');
    expect(part({ film: 'steady' }, { film: 'hurried' })).toBe('near');
    expect(part({ film: 'steady' }, {})).toBe('not-known');
    expect(standingOfPart(ask('OA.4'), []).standing).toBe('not-known');
  });
});
