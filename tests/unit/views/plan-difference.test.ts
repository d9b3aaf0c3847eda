import { expect, test } from 'vitest';
import { type ComparedPlan, drillDifference, planDifference } from '#lib/views/plan-difference.ts';

type Item = ComparedPlan['items'][number];
const rungs = new Map([
  ['tuck', { name: 'Tuck', measure: 'hold' as const, ladderId: 'planche' }],
  ['advanced', { name: 'Advanced tuck', measure: 'hold' as const, ladderId: 'planche' }],
  ['pull', { name: 'Pull-up', measure: 'reps' as const, ladderId: 'pull-up' }],
  ['fist', { name: 'Fist support', measure: 'reps' as const, ladderId: 'wrists' }],
]);
const line = (rungId: string, over: Partial<Item> = {}): Item => ({
  session: 'A',
  rungId,
  side: 'both',
  sets: 4,
  target: 8,
  minutes: null,
  timesPerWeek: 3,
  support: null,
  stopRule: '',
  notTwoDaysRunning: false,
  pairedWith: null,
  noKitRungId: null,
  ...over,
});
const plan = (items: Item[], over: Partial<ComparedPlan> = {}): ComparedPlan => ({
  until: '2026-12-22',
  sessionsPerWeek: 3,
  easyWeeks: [],
  testWeeks: [],
  noKitWeeks: [],
  skillsInFocus: ['Planche'],
  sessions: [{ label: 'A', restSeconds: null, warmUp: '', warmUpMinutes: 0 }],
  items,
  ...over,
});
const between = (before: Item[], after: Item[]) =>
  drillDifference({ items: before }, { items: after }, rungs);

test('the same plan has no difference, in another order either', () => {
  expect(planDifference(plan([line('tuck')]), plan([line('tuck')]), rungs)).toEqual([]);
  expect(between([line('tuck'), line('pull')], [line('pull'), line('tuck')])).toEqual([]);
});

test('a rung of the same ladder takes the place of the one before; another ladder is new and gone', () => {
  expect(between([line('tuck')], [line('advanced', { target: 5 })])).toEqual([
    'Session A, Advanced tuck: was Tuck; 4 × 5 s, was 4 × 8 s',
  ]);
  expect(between([line('tuck')], [line('pull', { timesPerWeek: 2 })])).toEqual([
    'New in session A: Pull-up: 4 × 8, twice a week',
    'No longer in session A: Tuck',
  ]);
});

test('of a pyramid each rung finds its own line', () => {
  const before = [line('tuck'), line('advanced', { target: 5 })];
  const after = [line('advanced', { target: 6 }), line('tuck', { pairedWith: 'advanced' })];
  expect(between(before, after)).toEqual([
    'Session A, Advanced tuck: 4 × 6 s, was 4 × 5 s',
    'Session A, Tuck: a pyramid with Advanced tuck',
  ]);
});

test('one side alone is said with its side, both with the same words once', () => {
  const before = [line('pull', { side: 'left' }), line('pull', { side: 'right' })];
  const oneBack = [line('pull', { side: 'left', sets: 2 }), line('pull', { side: 'right' })];
  const both = [line('pull', { side: 'left', sets: 2 }), line('pull', { side: 'right', sets: 2 })];
  expect(between(before, oneBack)).toEqual(['Session A, Pull-up, left: 2 × 8, was 4 × 8']);
  expect(between(before, both)).toEqual(['Session A, Pull-up: 2 × 8, was 4 × 8']);
});

test('all that a line can carry is said when it changes', () => {
  const after = line('tuck', {
    session: 'B',
    minutes: 10,
    timesPerWeek: 1,
    support: 'rings',
    stopRule: 'stop when the hips drop',
    notTwoDaysRunning: true,
    noKitRungId: 'fist',
  });
  expect(between([line('tuck')], [after])).toEqual([
    'Session B, Tuck: 4 × 8 s in 10 min, was 4 × 8 s; once a week, was 3 times a week; was in session A; not two days running; on rings, was no support named; stop when the hips drop; without kit Fist support',
  ]);
});

test('the frame of the plan is said behind the drills', () => {
  const after = plan([line('tuck')], {
    until: null,
    sessionsPerWeek: 4,
    skillsInFocus: [],
    easyWeeks: ['2026-12-09'],
    noKitWeeks: ['2026-12-02'],
    sessions: [{ label: 'A', restSeconds: 90, warmUp: 'Wrists\nShoulders', warmUpMinutes: 6 }],
  });
  expect(planDifference(plan([line('tuck')]), after, rungs)).toEqual([
    'Session A: rest 90 s, was rest as needed; warm-up 6 min, Wrists, Shoulders, was no warm-up written',
    'Sessions a week: 4, was 3',
    'In focus: none, was Planche',
    'Last day: open, was 22 Dec',
    'Easy weeks: from 9 Dec, was none',
    'Weeks without kit: from 2 Dec, was none',
  ]);
});
