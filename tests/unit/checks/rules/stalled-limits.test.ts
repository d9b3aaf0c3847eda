import { describe, expect, it } from 'vitest';
import { stalled } from '#lib/checks/rules/stalled.ts';
import type { ClientHistory, HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import { judge, said, theOutcome } from '#tests/fixtures/check-client.ts';
import {
  aCheckIn,
  aHistory,
  aPlan,
  aPlanItem,
  aRung,
  day,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const HUNDRED = aRung({ pass: { sets: 1, target: 100, days: 2, tries: null } });
const ASKS_IT = aPlan({ items: [aPlanItem({ sets: 1, target: 100 })] });
const done = (days: number, value = 78) => aCheckIn(days, { sets: sets([value], { planned: 100 }) });
const history = (checkIns: HistoryCheckIn[], over: Partial<Omit<ClientHistory, 'client'>> = {}) =>
  aHistory({ rungs: [HUNDRED], plans: [ASKS_IT], checkIns, ...over });
const saidOf = (checkIns: HistoryCheckIn[], days: number, over = {}) =>
  said(theOutcome(judge(stalled, history(checkIns, over), days)));
const placedOn = (days: number) => ({
  placements: [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(days) }],
});

describe('stalled and the day somebody came onto a rung', () => {
  it('is clear on that day, when it was trained on it', () => {
    expect(saidOf([done(20)], 20, placedOn(20))).toBe('clear');
    expect(saidOf([done(19)], 20, placedOn(20))).toBe('not-enough-history: no training day in 28 days');
  });
  it('counts the score of that day, not of the day before', () => {
    const eight = [17, 24, 42, 54, 60, 66, 70, 79].map((days) => done(days));
    expect(saidOf(eight, 80, placedOn(17))).toBe('flagged watch');
    expect(saidOf(eight, 80, placedOn(18))).toBe(
      'not-enough-history: 7 of 8 training days with a score in 63 days',
    );
  });
});

describe('stalled and rungs of few steps', () => {
  /** Four of five, for ten weeks; from which day on it is called stalled. */
  const from = (measure: HistoryRung['measure']) => {
    const rung = aRung({ measure, usualWeeks: 6, pass: { sets: 1, target: 5, days: 2, tries: null } });
    const checkIns = threeAWeek(10, (at) => aCheckIn(at, { sets: sets([4], { planned: 5, tried: 5 }) }));
    const plans = [aPlan({ items: [aPlanItem({ sets: 1, target: 5 })] })];
    return [48, 49, 62, 63].find(
      (days) => saidOf(checkIns, days, { rungs: [rung], plans }) === 'flagged watch',
    );
  };
  it('waits half as long again for reps and tries, not for seconds', () => {
    expect(from('reps')).toBe(63);
    expect(from('made-tried')).toBe(63);
    expect(from('hold')).toBe(49);
  });
});
