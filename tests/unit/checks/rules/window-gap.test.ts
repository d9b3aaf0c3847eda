import { describe, expect, it } from 'vitest';
import { windowGap } from '#lib/checks/rules/window-gap.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRung, sets } from '#tests/fixtures/history-builders.ts';

const HEEL = aRung({
  id: 'heel',
  ladderId: 'H3',
  ladder: 'Heel pull, back to wall',
  name: 'Heel pull, back to wall',
  part: 'Over-balance',
  family: 'balance',
  measure: 'hold',
});
const TOE = aRung({
  id: 'toe',
  ladderId: 'H4',
  ladder: 'Toe pull, chest to wall',
  name: 'Toe pull, chest to wall',
  part: 'Under-balance',
  family: 'balance',
  measure: 'hold',
});
const RUNGS = [HEEL, TOE];
const held = (days: number, heel: number[], toe: number[]) =>
  aCheckIn(days, { sets: [...sets(heel, { rungId: 'heel' }), ...sets(toe, { rungId: 'toe' })] });
const days5 = (heel: number[], toe: number[]): HistoryCheckIn[] =>
  heel.map((value, at) => held(10 + at * 3, [value], [toe[at] ?? 0]));
const on = (checkIns: HistoryCheckIn[], days = 40, rungs = RUNGS) =>
  judge(windowGap, aHistory({ checkIns, rungs }), days);
const saidOf = (checkIns: HistoryCheckIn[], days = 40, rungs = RUNGS) =>
  said(theOutcome(on(checkIns, days, rungs)));

describe('window-gap', () => {
  it('speaks of toe pulls at 8 s against heel pulls at 15 s', () => {
    const finding = theFinding(on(days5([14, 16, 15, 17, 15], [7, 9, 8, 9, 8])));
    expect(finding.sentence).toBe(
      'Heel pulls 15 s, toe pulls 8 s (medians of 5 and 5 best holds): **47 %** apart.',
    );
    expect(finding).toMatchObject({ level: 'watch', tier: 'this-week', short: 'toe pulls 47 % shorter' });
  });
  it('speaks as well when heel pulls are the shorter', () => {
    expect(theFinding(on(days5([8, 8, 8, 8, 8], [15, 15, 15, 15, 15]))).short).toBe(
      'heel pulls 47 % shorter',
    );
  });
  it('draws the line at a third of the larger', () => {
    const five = (heel: number, toe: number) =>
      days5(new Array<number>(5).fill(heel), new Array<number>(5).fill(toe));
    expect(saidOf(five(15, 10))).toBe('clear');
    expect(saidOf(five(15, 9.9))).toBe('flagged watch');
  });
  it('needs five days of each in 42', () => {
    expect(saidOf(days5([15, 15, 15, 15], [8, 8, 8, 8]))).toBe(
      'not-enough-history: 4 and 4 of 5 days with heel pulls and toe pulls in 42 days',
    );
    const five = days5([15, 15, 15, 15, 15], [8, 8, 8, 8, 8]);
    const other = (days: number) => aCheckIn(days, { sets: sets([10], { rungId: 'heel' }) });
    expect(saidOf([...five, other(51)], 52)).toBe('flagged watch');
    expect(saidOf([...five, other(52)], 52)).toContain('5 and 4');
  });
  it('is lowered by no silence; after 42 days of it there is too little to say', () => {
    const five = days5([15, 15, 15, 15, 15], [8, 8, 8, 8, 8]);
    expect(saidOf(five, 63)).toBe('flagged watch');
    expect(saidOf(five, 64)).toContain('0 and 0');
  });
  it('takes the best clean hold of a day', () => {
    const best = [0, 3, 6, 9, 12].map((days) => held(days, [6, 15], [8, 3]));
    expect(theFinding(on(best)).evidence).toMatchObject({ heel: 15, toe: 8 });
  });
  it('compares holds of the same kind only', () => {
    const short = aRung({ ...TOE, name: 'Toe pull, chest to wall, short holds' });
    expect(on(days5([15, 15, 15, 15, 15], [3, 3, 3, 3, 3]), 40, [HEEL, short])).toEqual([]);
    expect(on([], 40, [HEEL])).toEqual([]);
  });
  it('needs five of either, and holds', () => {
    const lopsided = [
      ...days5([15, 15, 15, 15], [8, 8, 8, 8]),
      aCheckIn(30, { sets: sets([15], { rungId: 'heel' }) }),
    ];
    expect(saidOf(lopsided)).toContain('5 and 4 of 5');
    const five = days5([15, 15, 15, 15, 15], [8, 8, 8, 8, 8]);
    expect(on(five, 40, [HEEL, aRung({ ...TOE, measure: 'reps' })])).toEqual([]);
    expect(theOutcome(on(five)).subject.label).toBe('balance window');
    const short = RUNGS.map((rung) => aRung({ ...rung, name: `${rung.name}, short holds` }));
    expect(theOutcome(on(five, 40, short)).subject).toMatchObject({
      key: 'window:short holds',
      label: 'balance window, short holds',
    });
    expect(saidOf(days5([0, 0, 0, 0, 0], [0, 0, 0, 0, 0]))).toBe('clear');
  });
  it('speaks of each kind of hold in the order of their names', () => {
    const kinds = ['hands further out', 'short holds'].map((name) =>
      RUNGS.map((rung) => aRung({ ...rung, id: `${rung.id}, ${name}`, name: `${rung.ladder}, ${name}` })),
    );
    for (const rungs of [[RUNGS, ...kinds].flat(), [...kinds, RUNGS].reverse().flat()]) {
      expect(on([], 40, rungs).map((outcome) => outcome.subject.key)).toEqual([
        'window:',
        'window:hands further out',
        'window:short holds',
      ]);
    }
  });
});
