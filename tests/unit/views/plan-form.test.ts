import { expect, test } from 'vitest';
import { planFormModel } from '#lib/views/plan-form.ts';
import { carryWeeks, weeksOf } from '#lib/views/plan-weeks.ts';

type Loaded = Parameters<typeof planFormModel>[0];
type Version = Loaded['versions'][number];
const version = (over: Partial<Version> = {}): Version => ({
  version: 1,
  from: '2026-11-02',
  until: '2026-12-13',
  sessionsPerWeek: 4,
  why: 'Left lags',
  notes: 'Slowly',
  by: 'Ines',
  createdAt: new Date('2026-11-01T10:00:00Z'),
  acceptedWeekAu: 900,
  easyWeeks: ['2026-11-30'],
  testWeeks: [],
  noKitWeeks: ['2026-11-09'],
  skillsInFocus: ['Planche'],
  sessions: [{ label: 'A', restSeconds: 0, warmUp: '', warmUpMinutes: 0, minutes: null }],
  items: [],
  ...over,
});
const loaded = (over: Partial<Loaded> = {}): Loaded => ({
  clientId: 'c',
  today: '2026-11-25',
  versions: [version()],
  rungs: [],
  skills: [{ id: 's', name: 'Planche' }],
  goals: [],
  ...over,
});

test('a first plan is empty, from today, for four weeks', () => {
  expect(planFormModel(loaded({ versions: [] }))).toMatchObject({
    baseVersion: 0,
    from: '2026-11-25',
    until: '2026-12-22',
    rows: [{ session: 'A', rungId: '' }],
    goals: [],
  });
});

test('a change keeps the last day still to come, the accepted load and weeks still to come', () => {
  expect(planFormModel(loaded())).toMatchObject({
    baseVersion: 1,
    from: '2026-11-25',
    until: '2026-12-13',
    acceptedWeekAu: 900,
    easyWeeks: ['2026-12-02'],
    noKitWeeks: [],
    goals: [{ skillId: 's', wantedBy: '' }],
    why: '',
    notes: 'Slowly',
    sessions: [{ label: 'A', restSeconds: '0', warmUpMinutes: '' }],
  });
  const over = planFormModel(loaded({ versions: [version({ until: '2026-11-20' })] }));
  expect(over.until).toBe('2026-12-22');
  expect(planFormModel(loaded({ versions: [version({ until: null })] })).until).toBe('');
  const coming = planFormModel(loaded({ versions: [version({ from: '2026-12-01' })] }));
  expect(coming.from).toBe('2026-12-01');
});

test('goals that are kept stand before the skills of the last plan', () => {
  const goals = [{ skillId: 's', skill: 'Planche', wantedBy: '2027-06-01' }];
  expect(planFormModel(loaded({ goals })).goals).toEqual([{ skillId: 's', wantedBy: '2027-06-01' }]);
});

test('every version says when, by whom, why, and what it changed', () => {
  const newer = version({ version: 2, sessionsPerWeek: 3, createdAt: new Date('2026-11-20T10:00:00Z') });
  const { versions } = planFormModel(loaded({ versions: [newer, version()] }));
  expect(versions).toMatchObject([
    {
      title: 'Version 2, from 2 Nov to 13 Dec, saved Fri 20 Nov, by Ines',
      why: 'Left lags',
      changes: ['Sessions a week: 3, was 4'],
    },
    { version: 1, changes: [] },
  ]);
});

test('weeks run from the first day, to the last or for eight, sixteen at most', () => {
  expect(weeksOf('2026-11-25', '2026-12-08').map(({ date }) => date)).toEqual(['2026-11-25', '2026-12-02']);
  expect(weeksOf('2026-11-25', '')).toHaveLength(8);
  expect(weeksOf('2026-11-25', '2027-12-31')).toHaveLength(16);
  expect(weeksOf('', '2026-12-08')).toEqual([]);
  expect(carryWeeks(['2026-12-01'], '2026-11-25', '2026-12-30')).toEqual(['2026-12-02']);
  expect(carryWeeks(['2026-12-02'], '2026-11-25', '2026-12-30')).toEqual(['2026-12-02']);
});
