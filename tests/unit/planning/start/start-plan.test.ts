import { describe, expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { PlanLine } from '#lib/domain/plan-line.ts';
import { firstWeekOf, type StartPlanFacts, startPlan } from '#lib/planning/start/start-plan.ts';
import { answer, FACTS, READY } from './start-fixture.ts';

const line = (rungId: string, over: Partial<PlanLine> = {}): PlanLine => ({
  session: 'A',
  rungId,
  side: 'both',
  sets: 4,
  target: 10,
  minutes: null,
  timesPerWeek: 2,
  support: null,
  stopRule: '',
  notTwoDaysRunning: false,
  pairedWith: null,
  noKitRungId: null,
  ...over,
});
const facts = (over: Partial<StartPlanFacts> = {}): StartPlanFacts => ({
  ...FACTS,
  places: [],
  answers: [],
  limits: [],
  date: '2026-11-25',
  numbers: DEFAULT_LIMITS,
  ...over,
});
const on = (
  rungId: string | null,
  ladderId = rungId?.split('.')[0] ?? '',
  side: 'both' | 'left' | 'right' = 'both',
) => ({
  ladderId,
  side,
  rungId,
});

describe('a line', () => {
  test('is done on the rung where the client stands, with the sets of the kept plan', () => {
    const plan = startPlan([line('H2.6', { target: 30 })], facts({ places: [on('H2.3')] }));
    expect(plan.lines).toMatchObject([
      { rungId: 'H2.3', planned: 'H2.6', sets: 4, session: 'A', timesPerWeek: 2 },
    ]);
    expect(plan.leftOut).toEqual([]);
  });

  test('asks what the tests showed, never more than the pass mark', () => {
    const answers = [answer('H2.3', [50, 40, 40])];
    const target = (values: number[]) =>
      startPlan(
        [line('H2.3', { target: 60 })],
        facts({ places: [on('H2.3')], answers: [answer('H2.3', values)] }),
      ).lines[0]?.target;
    expect(startPlan([line('H2.6')], facts({ places: [on('H2.3')], answers })).lines[0]?.target).toBe(45);
    expect(target([36, 36, 36])).toBe(36);
  });

  test('of sides that stand apart becomes one for each', () => {
    const places = [on('OA.2', 'OA', 'left'), on('OA.3', 'OA', 'right')];
    const plan = startPlan([line('OA.4')], facts({ places, kit: ['scale'], answers: READY }));
    expect(plan.lines.map(({ rungId, side }) => [rungId, side])).toEqual([
      ['OA.2', 'left'],
      ['OA.3', 'right'],
    ]);
  });

  test('of a ladder that nobody placed begins on its first rung, where that is open', () => {
    expect(startPlan([line('W1.3', { target: 10 })], facts()).lines).toMatchObject([{ rungId: 'W1.1' }]);
    const closed = startPlan([line('H3.3')], facts());
    expect(closed.lines).toEqual([]);
    expect(closed.leftOut[0]?.why).toMatch(/^not open yet: /);
  });

  test('practised by minutes stays so', () => {
    const plan = startPlan([line('X1.2', { target: null, minutes: 6 })], facts({ places: [on('X1.1')] }));
    expect(plan.lines).toMatchObject([{ rungId: 'X1.1', target: null, minutes: 6 }]);
    expect(plan.firstWeek).toMatchObject([{ minutes: 3 }]);
  });
});

describe('left out', () => {
  const why = (lines: PlanLine[], over: Partial<StartPlanFacts>) =>
    startPlan(lines, facts(over)).leftOut.map((one) => one.why);

  test('is what needs kit that is not at hand', () => {
    expect(why([line('H2.3')], { places: [on('H2.3')], kit: [] })).toEqual([
      'needs box, which is not at hand',
    ]);
  });
  test('is what a limit rules out; a limit of half takes half of the sets', () => {
    const limit = {
      tissue: 'wrist-back' as const,
      region: null,
      side: null,
      rule: 'none' as const,
      percent: null,
      from: '2026-11-01',
      until: null,
      who: 'Dr',
    };
    expect(why([line('H2.3')], { places: [on('H2.3')], limits: [limit] })).toEqual([
      'is ruled out by a limit',
    ]);
    const half = { ...limit, rule: 'reduced' as const, percent: 50 };
    expect(startPlan([line('H2.3')], facts({ places: [on('H2.3')], limits: [half] })).lines[0]?.sets).toBe(2);
  });
  test('is a ladder on which the coach placed nowhere', () => {
    expect(why([line('H2.3')], { places: [on(null, 'H2')] })).toEqual(['the client stands on no rung of it']);
  });
  test('is the second half of a pyramid that lands on the same rung; the first stands alone', () => {
    const pyramid = [line('H3.3', { pairedWith: 'H3.4' }), line('H3.4', { pairedWith: 'H3.3' })];
    const plan = startPlan(pyramid, facts({ places: [on('H3.2')], answers: READY }));
    expect(plan.lines).toMatchObject([{ rungId: 'H3.2', pairedWith: null }]);
    expect(plan.leftOut.map((one) => one.why)).toEqual(['is the same rung as another line']);
  });
  test('is a rung that is no longer in the ladders', () => {
    expect(why([line('gone')], {})).toEqual(['is no longer in the ladders']);
  });
});

test.each([
  [6, 4],
  [5, 3],
  [4, 2],
  [3, 1],
  [2, 1],
  [1, 1],
])('the first week: of %i sets %i', (sets, first) => {
  expect(firstWeekOf({ sets, minutes: null, target: 5 })).toEqual({ sets: first, minutes: null, target: 5 });
  const plan = startPlan([line('H2.3', { sets })], facts({ places: [on('H2.3')] }));
  expect(plan.firstWeek.map((one) => one.sets)).toEqual([first]);
  expect(plan.lines.map((one) => one.sets)).toEqual([sets]);
});
