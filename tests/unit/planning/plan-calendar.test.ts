import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '#lib/domain/local-date.ts';
import type { EditedPlan } from '#lib/planning/edited-plan.ts';
import { planCalendar } from '#lib/planning/plan-calendar.ts';
import { aPlan, aPlanItem, START } from '#tests/fixtures/history-builders.ts';

const WEEK = Array.from({ length: 7 }, (_, index) => addDays(START, index));
const FOUR = Array.from({ length: 28 }, (_, index) => addDays(START, index));
/** One plan for every date: the same object, as a view gives it. */
const always = (plan: EditedPlan) => () => plan;
const said = (sessions: ReturnType<typeof planCalendar>) =>
  sessions.map(({ date, label }) => `${date.slice(8)} ${label}`);

describe('which sessions fall on which days', () => {
  it('spreads three a week over Monday, Wednesday and Friday, in turn', () => {
    const plan = aPlan({
      items: [aPlanItem({ session: 'A', timesPerWeek: 1.5 }), aPlanItem({ session: 'B', timesPerWeek: 1.5 })],
    });
    expect(said(planCalendar(WEEK, () => plan))).toEqual(['02 A', '04 B', '06 A']);
  });

  it('gives the session that is asked for twice as often two turns of three', () => {
    const plan = aPlan({
      items: [aPlanItem({ session: 'A', timesPerWeek: 2 }), aPlanItem({ session: 'B', timesPerWeek: 1 })],
    });
    const sessions = planCalendar(FOUR, () => plan);
    expect(sessions.filter(({ label }) => label === 'A')).toHaveLength(8);
    expect(sessions.filter(({ label }) => label === 'B')).toHaveLength(4);
  });

  it('gives the short stand-in no turn, unless there is nothing else', () => {
    const items = [aPlanItem({ session: 'A' }), aPlanItem({ session: 'short' })];
    expect(said(planCalendar(WEEK, always(aPlan({ items }))))).toEqual(['02 A', '04 A', '06 A']);
    const alone = aPlan({ items: [aPlanItem({ session: 'short' })] });
    expect(planCalendar(WEEK, () => alone)).toHaveLength(3);
  });

  it('leaves a line out evenly that is asked for less often than its session', () => {
    const items = [
      aPlanItem({ timesPerWeek: 3 }),
      aPlanItem({ rungId: 'rare', timesPerWeek: 1 }),
      aPlanItem({ rungId: 'rarer', timesPerWeek: 0.5 }),
    ];
    const lines = planCalendar(FOUR, always(aPlan({ items }))).flatMap((session) => session.items);
    const count = (rungId: string) => lines.filter((item) => item.rungId === rungId).length;
    expect([count('pull-1'), count('rare'), count('rarer')]).toEqual([12, 4, 2]);
  });

  it('keeps a line that must not come two days running to every other day', () => {
    const items = [
      aPlanItem({ timesPerWeek: 7, rungId: 'daily' }),
      { ...aPlanItem({ timesPerWeek: 7 }), notTwoDaysRunning: true },
    ];
    const sessions = planCalendar(WEEK, always(aPlan({ sessionsPerWeek: 7, items })));
    expect(sessions.map(({ items: due }) => due.length)).toEqual([2, 1, 2, 1, 2, 1, 2]);
  });

  it('puts two sessions on a day when there are more than seven a week', () => {
    expect(planCalendar(WEEK, always(aPlan({ sessionsPerWeek: 9 })))).toHaveLength(9);
  });

  it('has no session without a plan or without lines', () => {
    expect(planCalendar(WEEK, () => undefined)).toEqual([]);
    expect(planCalendar(WEEK, always(aPlan({ items: [] })))).toEqual([]);
  });

  it('has as many sessions a week as planned, whatever the lines', () => {
    const items = fc.array(
      fc.record({ session: fc.constantFrom('A', 'B', 'C'), times: fc.integer({ min: 1, max: 14 }) }),
      { minLength: 1, maxLength: 6 },
    );
    fc.assert(
      fc.property(items, fc.integer({ min: 1, max: 14 }), (made, perWeek) => {
        const plan = aPlan({
          sessionsPerWeek: perWeek,
          items: made.map(({ session, times }) => aPlanItem({ session, timesPerWeek: times / 2 })),
        });
        const sessions = planCalendar(FOUR, () => plan);
        for (let week = 0; week < 4; week += 1) {
          const dates = FOUR.slice(week * 7, week * 7 + 7);
          expect(sessions.filter(({ date }) => dates.includes(date))).toHaveLength(perWeek);
        }
      }),
      { numRuns: 100, seed: 4 },
    );
  });
});
