import { expect, test } from 'vitest';
import type { HistoryRung } from '#lib/domain/history.ts';
import { editedPlan, planBody, sessionsLeft } from '#lib/views/plan-body.ts';
import type { PlanTyped } from '#lib/views/plan-form.ts';
import { emptySession } from '#lib/views/plan-form.ts';
import { planLive } from '#lib/views/plan-live.ts';
import { emptyRow, type FormRow } from '#lib/views/plan-rows.ts';
import {
  aCheckIn,
  aHistory,
  aRestDay,
  aRung,
  day,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const WEEKS = 12;
const LAST = WEEKS * 7 - 1;
const rungs: HistoryRung[] = [
  aRung(),
  ...['b', 'c', 'd', 'e'].map((id) =>
    aRung({ id, ladderId: id, ladder: `ladder ${id}`, skill: `Skill ${id}` }),
  ),
];
const names = {
  skills: new Map([
    ['s1', 'One'],
    ['s2', 'Two'],
    ['s3', 'Three'],
  ]),
  needsKit: new Set(['pull-1']),
};
const row = (key: number, rungId: string, over: Partial<FormRow> = {}): FormRow => ({
  ...emptyRow(key, 'A'),
  ladderId: rungId,
  rungId,
  sets: '3',
  target: '5',
  ...over,
});
const typed = (over: Partial<PlanTyped> = {}): PlanTyped => ({
  from: day(LAST + 1),
  until: day(LAST + 28),
  sessionsPerWeek: '3',
  why: '',
  notes: '',
  easyWeeks: [],
  testWeeks: [],
  noKitWeeks: [],
  sessions: [emptySession('A')],
  rows: [row(0, 'pull-1')],
  goals: [],
  acceptedWeekAu: null,
  ...over,
});

/** Twelve weeks of three sessions of three sets of five, told on every day. */
const checkIns = threeAWeek(WEEKS, (days) => aCheckIn(days, { sets: sets([5, 5, 5]) }));
const told = new Set(checkIns.map((one) => one.date));
for (let days = 0; days <= LAST; days += 1) if (!told.has(day(days))) checkIns.push(aRestDay(days));
const history = aHistory({ checkIns });

function live(over: Partial<PlanTyped> = {}, past = history) {
  const plan = editedPlan(typed(over), names);
  if (!plan) throw new Error('no plan');
  return planLive({ history: past, rungs, plan, yesterday: day(LAST) });
}

test('a plan like the weeks before lies in the usual band and says nothing', () => {
  const { loads, warnings, jumpAu, minutes, weeks, parts } = live();
  expect(warnings).toEqual([]);
  expect(jumpAu).toBeNull();
  expect(loads[0]).toMatchObject({ title: 'Session load', isOver: false });
  for (const one of loads) {
    expect(one.bars).toHaveLength(4);
    expect(one.isOver).toBe(false);
  }
  expect(minutes).toEqual([{ label: 'A', minutes: expect.any(Number) }]);
  expect(weeks.map(({ sessions }) => sessions)).toEqual(Array(4).fill('3 sessions'));
  expect(parts).toHaveLength(1);
});

test('minutes told against the estimate are of the rests and warm-up that were planned then', () => {
  const sessions = [{ label: 'A', restSeconds: 600, warmUpMinutes: 10 }];
  const past = { ...history, plans: history.plans.map((plan) => ({ ...plan, sessions })) };
  const same = live({ sessions: [{ ...emptySession('A'), restSeconds: '600', warmUpMinutes: '10' }] }, past);
  const [bars, usual] = [same.loads[0], live().loads[0]];
  expect(bars?.bars.map(({ printed }) => printed)).toEqual(usual?.bars.map(({ printed }) => printed));
  expect(same.warnings).toEqual([]);
});

test('three times the sets are over the band, said by the check and can be accepted', () => {
  const { loads, warnings, jumpAu } = live({ rows: [row(0, 'pull-1', { sets: '9' })] });
  expect(loads.slice(1).some(({ isOver, bars }) => isOver && bars.every(({ over }) => over > 0))).toBe(true);
  expect(warnings[0]).toMatchObject({
    key: 'load-jump',
    sentence: expect.stringMatching(/^Done as planned, by /),
  });
  expect(jumpAu).toBeGreaterThan(0);
});

test('an easy week is named and lighter than the one before', () => {
  const { loads, weeks } = live({ rows: [row(0, 'pull-1', { sets: '4' })], easyWeeks: [day(LAST + 8)] });
  expect(weeks.map(({ kind }) => kind)).toEqual(['', 'easy', '', '']);
  const [first, second] = (loads[1]?.bars ?? []).map(({ inside, over }) => inside + over);
  expect(second).toBeCloseTo((first ?? 0) / 2, 5);
});

test('a week without kit leaves out what needs it, says so, and takes the stand-in where one is named', () => {
  const noKitWeeks = [day(LAST + 8)];
  const out = live({ noKitWeeks });
  expect(out.loads[1]?.bars.map(({ printed }) => printed === '0')).toEqual([false, true, false, false]);
  expect(out.warnings.map(({ sentence }) => sentence)).toEqual([
    expect.stringMatching(/^Left out in weeks without kit: /),
  ]);
  const stood = live({ noKitWeeks, rows: [row(0, 'pull-1', { noKitRungId: 'b' })] });
  expect(stood.loads[1]?.bars.every(({ printed }) => printed !== '0')).toBe(true);
  expect(stood.warnings).toEqual([]);
});

test('too many goals are said in the words of the check', () => {
  const goals = ['s1', 's2', 's3'].map((skillId) => ({ skillId, wantedBy: '' }));
  expect(live({ goals }).warnings).toEqual([
    expect.objectContaining({
      key: 'too-many-goals',
      sentence: 'The plan asks for **3 skills** in focus at once; at most 2 and 4 usually go well.',
    }),
  ]);
  expect(live({ goals: goals.slice(0, 2) }).warnings).toEqual([]);
});

test('a limit says what it takes out; under 18 a plan for every day says so', () => {
  const limit = {
    tissue: null,
    region: 'elbow-inner' as const,
    side: null,
    rule: 'none' as const,
    percent: null,
    from: day(LAST),
    until: day(LAST + 14),
    who: 'the physiotherapist',
  };
  const limited = live({}, { ...history, limits: [limit] });
  expect(limited.warnings.map(({ sentence }) => sentence)).toContainEqual(
    expect.stringMatching(/^Limit in force, until .* out, with a swap beside where there is one\.$/),
  );
  const young = { ...history, client: { ...history.client, under18: true } };
  const sentences = (sessionsPerWeek: string) =>
    live({ sessionsPerWeek, rows: [row(0, 'pull-1', { sets: '1' })] }, young).warnings.map(
      ({ sentence }) => sentence,
    );
  expect(sentences('7')).toContain('Under 18: one full rest day a week. This plan trains every day.');
  expect(sentences('6')).not.toContain('Under 18: one full rest day a week. This plan trains every day.');
});

test('without check-ins the session load is unknown, not zero', () => {
  const { loads, assumed } = live({}, aHistory({ checkIns: [] }));
  expect(loads[0]?.bars.map(({ printed }) => printed)).toEqual(Array(4).fill('unknown'));
  expect(loads[0]?.band).toBeNull();
  expect(assumed).toMatch(/^Session load is not foreseen/);
});

test('what is half typed is not in the plan: no rung, no dose, a word, or more than a plan can ask', () => {
  const half = [
    row(1, ''),
    row(2, 'b', { sets: '' }),
    row(3, 'b', { sets: 'three' }),
    row(4, 'b', { sets: '1000000000' }),
    row(5, 'b', { target: '' }),
    row(6, 'b', { timesPerWeek: '-1' }),
  ];
  expect(editedPlan(typed({ rows: half }), names)).toBeUndefined();
  expect(editedPlan(typed({ rows: [row(0, 'pull-1'), ...half] }), names)?.items).toHaveLength(1);
  expect(editedPlan(typed({ from: '' }), names)).toBeUndefined();
  expect(editedPlan(typed({ sessionsPerWeek: '0' }), names)).toBeUndefined();
  expect(
    editedPlan(typed({ rows: [row(0, 'b', { target: '', minutes: '10' })] }), names)?.items,
  ).toHaveLength(1);
});

test('the body holds lines as they stand, only weeks of the plan, only sessions with a line', () => {
  const body = planBody(
    typed({
      sessions: [emptySession('B'), emptySession('A')],
      rows: [row(4, 'pull-1', { sets: 'x' })],
      easyWeeks: [day(LAST + 1), '2020-01-01'],
    }),
    { baseVersion: 3, draftId: null },
  );
  expect(body).toMatchObject({ baseVersion: 3, easyWeeks: [day(LAST + 1)], sessions: [{ label: 'A' }] });
  expect(body.items).toEqual([expect.objectContaining({ rungId: 'pull-1', sets: 'x' })]);
  expect(Object.keys(body.items[0] ?? {})).not.toContain('key');
  expect(sessionsLeft([emptySession('B')])).toEqual(['A', 'short']);
});
