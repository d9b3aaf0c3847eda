import { describe, expect, it } from 'vitest';
import { stalled } from '#lib/checks/rules/stalled.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
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
const done = (days: number, value: number) => aCheckIn(days, { sets: sets([value], { planned: 100 }) });
const over10Weeks = (valueAt: (days: number) => number) =>
  threeAWeek(10, (days) => done(days, valueAt(days)));
const history = (checkIns: HistoryCheckIn[], over: Partial<Omit<ClientHistory, 'client'>> = {}) =>
  aHistory({ rungs: [HUNDRED], plans: [ASKS_IT], checkIns, ...over });
const saidOf = (checkIns: HistoryCheckIn[], days = 69, over = {}) =>
  said(theOutcome(judge(stalled, history(checkIns, over), days)));
const flat = over10Weeks(() => 78);

describe('stalled', () => {
  it('speaks after weeks of honest practice without gain, with its numbers', () => {
    const finding = theFinding(judge(stalled, history(flat), 69));
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      points: 1,
      subject: { key: 'pull', side: 'both' },
    });
    expect(finding.sentence).toBe(
      'Pull-up: **78 %** of 1 × 100 after 67 days on this rung, no gain in 28 days; 12 training days in 28.',
    );
    expect(finding.evidence).toMatchObject({
      score: 0.78,
      daysOnRung: 67,
      slopeUpperPercent: 0,
      trainingDays: 27,
      recentTrainingDays: 12,
    });
    expect(finding.working.daysKnown).toEqual({ known: 61, of: 63 });
  });
  it('is clear for a client who gains', () => {
    expect(saidOf(over10Weeks((days) => 40 + days * 0.7))).toBe('clear');
  });
  it('draws the line at 49 days, or the usual time where that is longer', () => {
    expect(saidOf(flat, 49)).toBe('flagged watch');
    expect(saidOf(flat, 48)).toBe('clear');
    const slow = { rungs: [{ ...HUNDRED, usualWeeks: 9 }] };
    expect(saidOf(flat, 63, slow)).toBe('flagged watch');
    expect(saidOf(flat, 62, slow)).toBe('clear');
  });
  it('waits half as long again where one rep is a fifth of the pass mark or more', () => {
    const reps = (target: number, days: number) => {
      const rung = aRung({ measure: 'reps', usualWeeks: 6, pass: { sets: 1, target, days: 2, tries: null } });
      const plans = [aPlan({ items: [aPlanItem({ sets: 1, target })] })];
      const short = threeAWeek(10, (at) => aCheckIn(at, { sets: sets([target - 1], { planned: target }) }));
      return saidOf(short, days, { rungs: [rung], plans });
    };
    expect([reps(5, 62), reps(5, 63)]).toEqual(['clear', 'flagged watch']);
    expect([reps(6, 48), reps(6, 49)]).toEqual(['clear', 'flagged watch']);
  });
  it('draws the line at 95 % of the pass mark', () => {
    expect(saidOf(over10Weeks(() => 94))).toBe('flagged watch');
    expect(saidOf(over10Weeks(() => 95))).toBe('clear');
  });
  it('goes by the median of the last 5 scores', () => {
    // Of the last 4 and of the last 6 the median is 95.5, of the last 5 it is 94.
    const last = [97, 90, 94, 94, 97, 97];
    expect(saidOf(threeAWeek(10, (days, session) => done(days, last[session - 24] ?? 94)))).toBe(
      'flagged watch',
    );
  });
  it('asks for 90 % certainty that there is no gain', () => {
    const uneven = over10Weeks((days) => 70 + 2.3 * ((days * 5) % 13));
    const at = (over: Partial<Limits>) => said(theOutcome(judge(stalled, history(uneven), 69, over)));
    expect(at({ 'stalled.interval': 0.8 })).toBe('flagged watch');
    expect(at({})).toBe('clear');
  });
  it('draws the line at a gain of 2.5 % in 28 days', () => {
    expect(saidOf(over10Weeks((days) => 60 + (days * 2.49) / 28))).toBe('flagged watch');
    expect(saidOf(over10Weeks((days) => 60 + (days * 2.5) / 28))).toBe('clear');
    expect(saidOf(over10Weeks((days) => 60 + (days * 2.6) / 28))).toBe('clear');
  });
  it('needs 8 training days over 42 days, and 5 in the last 28', () => {
    const every = (dates: number[]) => dates.map((days) => done(days, 78));
    expect(saidOf(every([7, 14, 21, 28, 45, 52, 59, 66]))).toBe(
      'not-enough-history: 4 of 5 training days in 28 days',
    );
    expect(saidOf(every([10, 17, 24, 42, 48, 54, 60, 66]))).toBe('flagged watch');
    expect(saidOf(every([17, 24, 42, 48, 54, 60, 66]))).toContain('7 of 8 training days');
  });
  it('leaves out easy days, soft ground and days only tapped', () => {
    const tapped = threeAWeek(10, (days) =>
      aCheckIn(days, { sets: sets([78], { planned: 100, how: 'as-planned' }) }),
    );
    expect(saidOf(tapped)).toContain('0 of 8');
    expect(saidOf(threeAWeek(10, (days) => ({ ...done(days, 78), ground: 'grass' as const })))).toContain(
      '0 of 8',
    );
  });
  it('is silent when the plan asks less than the pass mark', () => {
    expect(saidOf(flat, 69, { plans: [aPlan({ items: [aPlanItem({ sets: 1, target: 99 })] })] })).toBe(
      'clear',
    );
    expect(saidOf(flat, 69, { plans: [] })).toBe('clear');
  });
  it('never calls too little practice a stall', () => {
    const hardly = threeAWeek(10, (days, session) =>
      session % 12 < 7 ? aCheckIn(days, { sets: [] }) : done(days, 78),
    );
    expect(saidOf(hardly)).toBe('clear');
    const half = threeAWeek(10, (days, session) =>
      session % 2 === 0 ? aCheckIn(days, { sets: [] }) : done(days, 78),
    );
    expect(saidOf(half)).toBe('flagged watch');
  });
  it('waits while a step is tried, and closes nothing meanwhile', () => {
    const step = {
      kind: 'one-rung-back',
      takenOn: day(50),
      ladderId: 'pull',
      side: null,
      reviewOn: day(70),
      words: '',
    };
    expect(saidOf(flat, 69, { steps: [step] })).toBe('clear, lower bound');
    expect(saidOf(flat, 69, { steps: [{ ...step, reviewOn: day(69) }] })).toBe('flagged watch');
    expect(saidOf(flat, 69, { steps: [{ ...step, ladderId: 'other' }] })).toBe('flagged watch');
  });
  it('is silent for 10 days after a change of what the plan asks', () => {
    const plans = (from: number) => [
      ASKS_IT,
      aPlan({ version: 2, from: day(from), items: [aPlanItem({ sets: 2, target: 100 })] }),
    ];
    expect(saidOf(flat, 69, { plans: plans(60) })).toBe('clear');
    expect(saidOf(flat, 69, { plans: plans(59) })).toBe('flagged watch');
  });
  it('starts its clock at the first training day here, and again on another rung', () => {
    const late = flat.filter((checkIn) => checkIn.date >= day(21));
    expect(saidOf(late, 69)).toBe('clear');
    const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(25) }];
    expect(saidOf(flat, 69, { placements })).toBe('clear');
  });
  it('is neither raised nor closed by silence', () => {
    expect(saidOf(flat, 94)).toBe('flagged watch'); // 27 days after the last
    expect(saidOf(flat, 95)).toBe('not-enough-history: no training day in 28 days');
    const until46 = flat.filter((checkIn) => checkIn.date < day(48));
    expect(saidOf(until46, 60)).toBe('clear'); // 46 days on the rung when last trained
  });
  it('counts its windows to the day, back from the last training day', () => {
    const every = (dates: number[]) =>
      saidOf(
        dates.map((days) => done(days, 78)),
        80,
      );
    expect(every([17, 24, 42, 54, 60, 66, 70, 79])).toBe('flagged watch'); // 62 days apart: inside
    expect(every([16, 24, 42, 54, 60, 66, 70, 79])).toContain('7 of 8'); // 63 days apart: outside
    expect(every([17, 24, 30, 52, 60, 66, 70, 79])).toBe('flagged watch'); // the fifth 27 days before
    expect(every([17, 24, 30, 51, 60, 66, 70, 79])).toContain('4 of 5'); // 28 days before
    expect(every([17, 30, 36, 40, 45, 52, 54, 59])).toBe('clear'); // span 42, but 42 days on the rung
  });
  it('takes a span of 42 days as enough, of 41 as too little', () => {
    const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(0) }];
    const spread = (first: number) =>
      [first, 40, 45, 50, 55, 60, 65, 70]
        .map((days) => done(days, 78))
        .concat(aCheckIn(0, { sets: sets([78, 78], { how: 'as-planned', planned: 100 }) }));
    expect(saidOf(spread(28), 70, { placements })).toBe('flagged watch');
    expect(saidOf(spread(29), 70, { placements })).toContain('over 41 of 42 days');
  });
  it('counts the day of the placement, and goes by it where the history starts later', () => {
    const from = (days: number) => [
      { ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(days) },
    ];
    expect(saidOf(flat, 63, { placements: from(14) })).toBe('flagged watch');
    expect(saidOf(flat, 63, { placements: from(15) })).toBe('clear'); // first training day after it: 16
    const joined = aHistory({
      rungs: [{ ...HUNDRED, usualWeeks: 9 }],
      plans: [ASKS_IT],
      checkIns: flat.slice(6),
      client: { joinedAt: null },
    });
    const placedBefore = {
      ...joined,
      placements: [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: '2026-02-20' }],
    };
    expect(said(theOutcome(judge(stalled, placedBefore, 67)))).toBe('flagged watch');
  });
  it('goes by the usual time of the team once 8 clients passed, and says which one it used', () => {
    const withTeam = (days: number, passed: number) => ({
      rungs: [{ ...HUNDRED, usualDaysHere: { days, passed } }],
    });
    expect(saidOf(flat, 63, withTeam(63, 8))).toBe('flagged watch');
    expect(saidOf(flat, 62, withTeam(63, 8))).toBe('clear');
    expect(saidOf(flat, 62, withTeam(63, 7))).toBe('flagged watch');
    expect(saidOf(flat, 48, withTeam(20, 8))).toBe('clear'); // never sooner than 49 days
    const slow = { rungs: [{ ...HUNDRED, usualWeeks: 9, usualDaysHere: { days: 50, passed: 11 } }] };
    expect(saidOf(flat, 51, slow)).toBe('flagged watch');
    const workingOf = (over: Partial<Omit<ClientHistory, 'client'>>) =>
      theFinding(judge(stalled, history(flat, over), 69)).working;
    expect(workingOf(withTeam(63, 11)).inputs).toContainEqual({
      name: 'usual time here',
      value: 63,
      unit: 'days, 11 clients passed',
    });
    expect(workingOf(withTeam(63, 8)).inputs).toContainEqual({
      name: 'usual time here',
      value: 63,
      unit: 'days, 8 clients passed',
    });
    expect(workingOf(withTeam(63, 7)).inputs).toContainEqual({
      name: "usual time, the library's",
      value: 28,
      unit: 'days, 7 of 8 clients passed here',
    });
    const used = workingOf(withTeam(63, 7)).thresholds.map((one) => one.id);
    expect(used).toContain('stalled.usualTimeClients');
    expect(workingOf({}).inputs.map((one) => one.name)).not.toContain("usual time, the library's");
  });
});
