import { describe, expect, it } from 'vitest';
import { askedNoAnswer } from '#lib/checks/rules/asked-no-answer.ts';
import { startAfterBreak } from '#lib/checks/start-after-break.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { aCheckIn, aHistory, aPlan, day, evening } from '#tests/fixtures/history-builders.ts';

const JOINED = `${day(0)}T08:00:00.000Z`;
/** Four weeks without training told at the start, and a session of 300 AU on the first day. */
const told = (over: { until?: string | null; toldWeekAu?: number | null }, last = 0) => {
  const plans = [aPlan({ from: day(0), until: over.until === undefined ? null : over.until })];
  const client = {
    breakWeeks: 4,
    toldWeekAu: over.toldWeekAu === undefined ? 900 : over.toldWeekAu,
    joinedAt: JOINED,
  };
  const checkIns = [aCheckIn(0, { effort: 5, minutes: 60 })];
  return startAfterBreak(buildView(aHistory({ client, plans, checkIns }), evening(last)), DEFAULT_LIMITS);
};
const sentence = (outcome: ReturnType<typeof told>) =>
  outcome?.status === 'flagged' ? outcome.sentence : (outcome?.status ?? 'nothing');

describe('the start after a break told before it', () => {
  it('holds the first week against a plan that runs to that day, and asks for one where it has ended', () => {
    expect(sentence(told({ until: day(3) }, 3))).toBe('clear');
    expect(sentence(told({ until: day(2) }, 3))).toContain('no plan is written');
    expect(sentence(told({ until: day(9) }, 3))).toBe('clear');
  });
  it('lets the first week be just the share it may be', () => {
    expect(sentence(told({ toldWeekAu: 600 }))).toBe('clear');
    expect(sentence(told({ toldWeekAu: 590 }))).toContain('of the told usual week');
  });
  it('says where days of the week are unknown that it can only be more', () => {
    const cleared = (last: number) => {
      const outcome = told({}, last);
      return outcome?.status === 'clear' ? outcome.lowerBound : outcome?.status;
    };
    expect([cleared(0), cleared(3)]).toEqual([false, true]);
  });
  it('says nothing of a share where no usual week was told', () => {
    for (const toldWeekAu of [null, 0]) expect(sentence(told({ toldWeekAu }))).toBe('not-enough-history');
  });
});

it('start tests that moved at this very instant are counted from then', () => {
  const asked = (movedAt: string) => {
    const startTests = [{ id: 'tests', askedAt: `${day(0)}T08:00:00.000Z`, movedAt, doneAt: null }];
    const view = buildView(aHistory({ startTests, checkIns: [aCheckIn(0)] }), evening(10));
    return askedNoAnswer.evaluate(view, DEFAULT_LIMITS)[0]?.status;
  };
  expect(asked(evening(10).instant)).toBe('clear');
  expect(asked(evening(11).instant)).toBe('flagged');
});
