import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#lib/checks/run.ts';
import { THRESHOLDS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aRestDay,
  day,
  evening,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const states = (history: Parameters<typeof buildView>[0], days: number) =>
  buildView(history, evening(days)).days.map((one) => one.state);

describe('what a day is', () => {
  it('is trained, rest, taken as rest between two check-ins close together, and unknown after the last', () => {
    const checkIns = [aCheckIn(0), aRestDay(1), aCheckIn(4)];
    expect(states(aHistory({ checkIns }), 6)).toEqual([
      'trained',
      'rest',
      'taken-as-rest',
      'taken-as-rest',
      'trained',
      'unknown',
      'unknown',
    ]);
  });
  it('stays unknown in a long gap, and off in a holiday', () => {
    const checkIns = [aCheckIn(0), aCheckIn(1), aCheckIn(2), aCheckIn(9)];
    const absences = [{ from: day(4), to: day(5), kind: 'holiday' as const }];
    expect(states(aHistory({ checkIns, absences }), 9).slice(3, 9)).toEqual([
      'unknown',
      'off',
      'off',
      'unknown',
      'unknown',
      'unknown',
    ]);
  });
  it('never makes an unknown day a zero', () => {
    const view = buildView(aHistory({ checkIns: [aCheckIn(0)] }), evening(3));
    expect(view.days.map((one) => one.sessionLoad)).toEqual([300, undefined, undefined, undefined]);
  });
  it('looks at nothing that is dated later', () => {
    const checkIns = [aCheckIn(0), aCheckIn(8)];
    expect(buildView(aHistory({ checkIns }), evening(3)).days).toHaveLength(4);
  });
});

describe('all checks together', () => {
  const rows = threeAWeek(12, (days, session) =>
    aCheckIn(days, { pain: session % 4 === 0 ? [aPain(session % 7)] : [], minutes: 40 + (session % 5) * 15 }),
  );
  const asOf = evening(82);
  const said = JSON.stringify(runChecks(aHistory({ checkIns: rows }), asOf));

  it('say the same whatever the order of the rows', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray(rows, { minLength: rows.length, maxLength: rows.length }),
        (checkIns) => {
          expect(JSON.stringify(runChecks(aHistory({ checkIns }), asOf))).toBe(said);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('never give more pain a lower place', () => {
    const places = { now: 3, today: 2, 'this-week': 1, 'good-news': -1 };
    const highest = (value: number) => {
      const checkIns = [...rows, aCheckIn(81, { pain: [aPain(value)] })];
      const tiers = runChecks(aHistory({ checkIns }), asOf).flatMap((one) =>
        one.status === 'flagged' && one.tier ? [places[one.tier]] : [],
      );
      return Math.max(-1, ...tiers);
    };
    for (let value = 1; value <= 10; value += 1)
      expect(highest(value)).toBeGreaterThanOrEqual(highest(value - 1));
  });

  it('never claim risk', () => {
    expect(said).not.toMatch(/injury risk|risk of/i);
  });
});

describe('the thresholds', () => {
  it('each have unit, meaning and source', () => {
    const all = Object.entries(THRESHOLDS);
    expect(all.length).toBeGreaterThan(80);
    expect(all.filter(([, one]) => !one.unit || !one.meaning || !one.source)).toEqual([]);
  });
});
