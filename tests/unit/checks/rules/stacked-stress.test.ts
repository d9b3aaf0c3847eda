import { describe, expect, it } from 'vitest';
import { stackedStress } from '#lib/checks/rules/stacked-stress.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aRestDay,
  aRung,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const rung = (id: string, family: HistoryRung['family'], weights: HistoryRung['weights']) =>
  aRung({ id, ladderId: id, ladder: id, family, weights });
const RUNGS = [
  rung('pull', 'bent-arm-pull', { 'elbow-bending': 0.8 }),
  rung('push', 'bent-arm-push', { 'elbow-straightening': 0.7, 'wrist-back': 0.6 }),
  rung('planche', 'straight-arm-push', { 'shoulder-forward': 0.8, 'wrist-back': 0.7 }),
  rung('grip', 'balance', { 'wrist-forward': 0.8 }),
];
const WEEKS = 10;
const LAST = 67;
/** Four sets of every drill; in the last three sessions `more` sets of the named ones. */
const history = (named: string[], more: number, over: Parameters<typeof aHistory>[0] = {}) =>
  aHistory({
    rungs: RUNGS,
    checkIns: threeAWeek(WEEKS, (days, session) =>
      aCheckIn(days, {
        sets: RUNGS.flatMap(({ id }) => {
          const rises = session >= WEEKS * 3 - 3 && named.includes(id);
          return sets(Array<number>(rises ? more : 4).fill(5), { rungId: id });
        }),
      }),
    ),
    ...over,
  });
const sayOf = (named: string[], more: number) =>
  said(theOutcome(judge(stackedStress, history(named, more), LAST)));
const THREE = ['pull', 'push', 'planche'];

describe('stacked-stress', () => {
  // Each of the last 3 days 1.15 x, on average 1.3 x the usual 4 sets: 5 is 1.25 x, 6 is 1.5 x. Own rule.
  it.each([
    [4, 'clear'],
    [5, 'clear'],
    [6, 'flagged watch'],
  ])('three families at %i sets of 4 give %s', (more, expected) => {
    expect(sayOf(THREE, more)).toBe(expected);
  });
  it('is not cleared by days without a word, over 16 of them', () => {
    const on = (days: number, checkIns = history(THREE, 6).checkIns) =>
      said(theOutcome(judge(stackedStress, history(THREE, 6, { checkIns }), days)));
    expect(on(LAST)).toBe('flagged watch');
    expect(on(LAST + 9)).toBe('clear, lower bound');
    const rests = [4, 8, 12, 16, 20].map((days) => aRestDay(LAST + days));
    expect(on(LAST + 20, [...history(THREE, 6).checkIns, ...rests])).toBe('clear');
  });
  it('is silent for two families, and for one however much', () => {
    expect(sayOf(['pull', 'push'], 6)).toBe('clear');
    expect(sayOf(['pull'], 12)).toBe('clear');
  });
  it('sees the wrist loaded more both ways', () => {
    const finding = theFinding(judge(stackedStress, history(['push', 'grip'], 6), LAST));
    expect(finding.evidence).toMatchObject({ how: 'wrist', tissues: 'wrist-back,wrist-forward' });
  });
  it('names each drill with its sets, and the tissues two of them load', () => {
    const families = theFinding(judge(stackedStress, history(THREE, 6), LAST));
    expect(families.sentence).toBe(
      '**3 kinds of work** rise at once: push 6, 6, 6 sets (usually 4); pull 6, 6, 6 sets (usually 4); planche 6, 6, 6 sets (usually 4).',
    );
    expect(families.short).toBe('3 families rising');
    expect(families.evidence).toMatchObject({ how: 'families', tissues: 'wrist-back' });
    const wrist = theFinding(judge(stackedStress, history(['push', 'grip'], 6), LAST));
    expect(wrist.sentence).toBe(
      '**The wrist is loaded more both ways**: push 6, 6, 6 sets (usually 4); grip 6, 6, 6 sets (usually 4).',
    );
    expect(wrist.short).toBe('wrist both ways');
  });
  it('names a tissue that two drills load just enough', () => {
    const tissues = (loaded: number) =>
      theFinding(judge(stackedStress, history(THREE, 6), LAST, { 'tissue.loaded': loaded })).evidence.tissues;
    expect(tissues(0.6)).toBe('wrist-back');
    expect(tissues(0.601)).toBe('');
  });
  it('acts when a joint they share scores 3', () => {
    const sore = (value: number) => {
      const made = history(THREE, 6);
      const checkIns = made.checkIns.map((one, index) =>
        index === made.checkIns.length - 2
          ? { ...one, nothingHurts: false, pain: [aPain(value, { region: 'wrist-back', side: 'left' })] }
          : one,
      );
      return said(theOutcome(judge(stackedStress, { ...made, checkIns }, LAST)));
    };
    expect(sore(2)).toBe('flagged watch');
    expect(sore(3)).toBe('flagged act');
  });
  it('waits for the first 28 days', () => {
    expect(said(theOutcome(judge(stackedStress, history(THREE, 6), 27)))).toMatch(/of 28 days known$/);
  });
});

describe('stacked-stress on its limits', () => {
  const spoken = (made: ReturnType<typeof history>, over: Parameters<typeof judge>[3] = {}) =>
    theOutcome(judge(stackedStress, made, LAST, over)).status === 'flagged';
  it.each([
    ['stackedStress.each', THREE, 1.5],
    ['stackedStress.mean', THREE, 1.5],
    ['tissue.loaded', ['push', 'grip'], 0.6],
    ['stackedStress.daysAtLeast', THREE, 10],
  ] as const)('%s speaks on the limit and not over it', (id, named, limit) => {
    expect(spoken(history([...named], 6), { [id]: limit })).toBe(true);
    expect(spoken(history([...named], 6), { [id]: limit + 0.001 })).toBe(false);
  });
  it('is silent when the fortnight is only at its usual', () => {
    // The three sessions before the last three had 2 sets: 3 x 2 + 3 x 6 is the usual 24.
    const made = history(THREE, 6);
    const checkIns = made.checkIns.map((one, index) =>
      index >= WEEKS * 3 - 6 && index < WEEKS * 3 - 3
        ? { ...one, sets: RUNGS.flatMap(({ id }) => sets([5, 5], { rungId: id })) }
        : one,
    );
    expect(spoken({ ...made, checkIns })).toBe(false);
  });
});

describe('stacked-stress and the fortnights before', () => {
  // Sessions on days 0, 2 and 4 of a week, six in a fortnight; the last three have 6 sets, so the last fortnight has 30.
  const QUIET = [4, 4, 4, 4, 4, 4];
  const BUSY = [6, 6, 6, 6, 5, 5]; // 34 sets
  /** Sets of each of three drills a session, fortnight by fortnight, oldest first; then the last fortnight. */
  const saidAfter = (fortnights: readonly number[][], days: number) => {
    const counts = [...fortnights.flat(), 4, 4, 4, 6, 6, 6];
    const checkIns = threeAWeek(counts.length / 3, (at, session) =>
      aCheckIn(at, {
        sets: THREE.flatMap((id) => sets(Array<number>(counts[session] ?? 4).fill(5), { rungId: id })),
      }),
    );
    return said(theOutcome(judge(stackedStress, history(THREE, 6, { checkIns }), days)));
  };
  it('counts a fortnight from the first day known on, not one with a day before it', () => {
    const four = [QUIET, BUSY, BUSY, QUIET];
    // Day 69 ends five whole fortnights: 24, 34, 34 and 24 sets before, a median of 29 under 30.
    expect(saidAfter(four, 69)).toBe('flagged watch');
    // A day sooner the oldest lacks a day: of 34, 34 and 24 the median is 34.
    expect(saidAfter(four, 68)).toBe('clear, lower bound');
  });
  it('looks at four fortnights before, not at a fifth', () => {
    expect(saidAfter([BUSY, BUSY, BUSY, QUIET, QUIET], 83)).toBe('flagged watch');
    expect(saidAfter([QUIET, BUSY, BUSY, BUSY, QUIET], 83)).toBe('clear, lower bound');
  });
  it('is not hidden by work of another kind that was dropped', () => {
    const made = history(THREE, 6);
    const checkIns = made.checkIns.map((one, session) => {
      const grip = session < WEEKS * 3 - 6 ? sets(Array<number>(30).fill(5), { rungId: 'grip' }) : [];
      return { ...one, sets: [...one.sets.filter(({ rungId }) => rungId !== 'grip'), ...grip] };
    });
    expect(said(theOutcome(judge(stackedStress, { ...made, checkIns }, LAST)))).toBe('flagged watch');
  });
  it('takes a drill that bends the wrist as much one way as the other for neither way', () => {
    const wrist = (forward: number) => {
      const both = rung('grip', 'balance', { 'wrist-forward': forward, 'wrist-back': 0.8 });
      const rungs = [...RUNGS.filter(({ id }) => id !== 'grip'), both];
      return said(theOutcome(judge(stackedStress, history(['push', 'grip'], 6, { rungs }), LAST)));
    };
    expect(wrist(0.8)).toBe('clear');
    expect(wrist(0.81)).toBe('flagged watch');
  });
});
