import { expect, test } from 'vitest';
import { planSchema } from '#lib/schemas/plan.ts';

const [ONE, TWO] = ['11111111-1111-4111-8111-111111111111', '22222222-2222-4222-8222-222222222222'];
const line = (over: object = {}) => ({
  session: 'A',
  rungId: ONE,
  side: 'both',
  sets: '4',
  target: '5',
  timesPerWeek: '3',
  ...over,
});
const plan = (over: object = {}) => ({
  baseVersion: 0,
  from: '2026-11-25',
  until: '2026-12-22',
  sessionsPerWeek: '3',
  items: [line()],
  ...over,
});
const refusals = (over: object) => {
  const read = planSchema.safeParse(plan(over));
  return read.success ? [] : read.error.issues.map((issue) => `${issue.path.join('.')}: ${issue.message}`);
};

test('what is not said has its default; numbers may be typed with a comma', () => {
  expect(planSchema.parse(plan({ items: [line({ timesPerWeek: '2,5', minutes: '' })] }))).toMatchObject({
    easyWeeks: [],
    noKitWeeks: [],
    sessions: [],
    acceptedWeekAu: null,
    draftId: null,
    items: [{ timesPerWeek: 2.5, minutes: null, support: null, stopRule: '', pairedWith: null }],
  });
});

test.each([
  [{ until: '2026-11-24' }, 'until: is before the first day'],
  [{ easyWeeks: ['2027-01-01'] }, 'easyWeeks.0: 2027-01-01 is outside the plan'],
  [{ noKitWeeks: ['2026-11-01'] }, 'noKitWeeks.0: 2026-11-01 is outside the plan'],
  [
    { easyWeeks: ['2026-12-02'], testWeeks: ['2026-12-02'] },
    'testWeeks.0: 2026-12-02 is an easy week already: choose one',
  ],
  [
    { sessions: [{ label: 'B' }] },
    'sessions.0.label: session B has no drill: add one, or take the session out',
  ],
  [{ sessions: [{ label: 'A' }, { label: 'A' }] }, 'sessions.1.label: session A stands twice'],
  [{ sessions: [{ label: 'A', restSeconds: '901' }] }, 'sessions.0.restSeconds: at most 900 s'],
  [{ items: [line({ target: '', minutes: '' })] }, 'items.0.target: write a target, or minutes of practice'],
  [{ items: [line({ sets: '31' })] }, 'items.0.sets: at most 30 sets'],
  [{ items: [line(), line()] }, 'items.1.rungId: is already in session A for this side'],
  [
    { items: [line({ pairedWith: TWO })] },
    'items.0.pairedWith: must be another line of session A with this side: choose it again, or none',
  ],
  [
    { goals: [{ skillId: ONE, wantedBy: '2026-11-24' }] },
    'goals.0.wantedBy: is before the first day of the plan: choose a later date, or none',
  ],
  [
    {
      goals: [
        { skillId: ONE, wantedBy: '' },
        { skillId: ONE, wantedBy: '' },
      ],
    },
    'goals.1.skillId: stands twice: keep one',
  ],
  [{ items: [] }, 'items: a plan needs at least one drill'],
])('%j is refused by its field, with the fix', (over, refusal) => {
  expect(refusals(over)).toContain(refusal);
});

test('a pyramid with another line of the session on this side is taken', () => {
  const items = [line({ pairedWith: TWO, side: 'left' }), line({ rungId: TWO })];
  expect(refusals({ items })).toEqual([]);
  expect(refusals({ items: [items[0], line({ rungId: TWO, session: 'B' })] })).toHaveLength(1);
});
