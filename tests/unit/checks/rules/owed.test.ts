import { describe, expect, it } from 'vitest';
import { askedNoAnswer } from '#lib/checks/rules/asked-no-answer.ts';
import { filmWaiting } from '#lib/checks/rules/film-waiting.ts';
import { limitEnding } from '#lib/checks/rules/limit-ending.ts';
import { notSeen } from '#lib/checks/rules/not-seen.ts';
import { tooManyGoals } from '#lib/checks/rules/too-many-goals.ts';
import type { HistoryFilm, HistoryLimit } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aHistory, aPlan, aPlanItem, aRung, day } from '#tests/fixtures/history-builders.ts';

// All numbers of these checks: common practice, no source.
const at = (days: number, time = '02:00') => `${day(days)}T${time}:00.000Z`;
const film = (over: Partial<HistoryFilm>): HistoryFilm => ({
  id: 'film-1',
  askedAt: at(0, '12:00'),
  receivedAt: null,
  lookedAt: null,
  words: 'One set from behind.',
  ...over,
});

describe('film-waiting', () => {
  const sayOf = (films: HistoryFilm[]) => said(theOutcome(judge(filmWaiting, aHistory({ films }), 10)));
  it.each([
    [at(10, '02:01'), 'clear'],
    [at(10), 'flagged watch'],
    [at(9, '02:01'), 'flagged watch'],
    [at(9), 'flagged act'],
  ])('a film that came at %s gives %s', (receivedAt, expected) => {
    expect(sayOf([film({ receivedAt })])).toBe(expected);
  });
  it('is cleared by a look, and says nothing of films that did not come', () => {
    expect(sayOf([film({ receivedAt: at(5), lookedAt: at(6) }), film({})])).toBe('clear');
    expect(said(theOutcome(judge(filmWaiting, aHistory(), 10)))).toBe('clear');
  });
});

describe('asked-no-answer', () => {
  const sayOf = (
    days: number,
    over: Partial<HistoryFilm> = {},
    history: Parameters<typeof aHistory>[0] = {},
  ) => said(theOutcome(judge(askedNoAnswer, aHistory({ films: [film(over)], ...history }), days)));
  it('speaks on the fifth day, days off left out', () => {
    expect(sayOf(4)).toBe('clear');
    expect(sayOf(5)).toBe('flagged watch');
    expect(sayOf(5, {}, { absences: [{ from: day(2), to: day(2), kind: 'illness' }] })).toBe('clear');
  });
  it('is cleared by the film', () => {
    expect(sayOf(8, { receivedAt: at(7) })).toBe('clear');
  });
});

describe('not-seen', () => {
  const sayOf = (days: number, seen: string[], client = {}) =>
    said(theOutcome(judge(notSeen, aHistory({ seen, client }), days)));
  it('is 14 days, and 7 in the first month', () => {
    expect(sayOf(53, [at(40, '08:00')])).toBe('clear');
    expect(sayOf(54, [at(40, '08:00')])).toBe('flagged watch');
    expect(sayOf(16, [at(10, '08:00')])).toBe('clear');
    expect(sayOf(17, [at(10, '08:00')])).toBe('flagged watch');
  });
  it('counts from joining when nobody has looked, and takes the newest look of any order', () => {
    expect(sayOf(6, [])).toBe('clear');
    expect(sayOf(7, [])).toBe('flagged watch');
    expect(sayOf(54, [at(45, '08:00'), at(30, '08:00')])).toBe('clear');
  });
  it('does not end with the first month: nobody has looked', () => {
    for (const days of [27, 28, 33]) expect(sayOf(days, [at(20, '08:00')])).toBe('flagged watch');
    expect(sayOf(41, [at(28, '08:00')])).toBe('clear');
    expect(sayOf(34, [at(27, '08:00')])).toBe('flagged watch');
  });
  it('is quiet for somebody paused or not yet in', () => {
    expect(sayOf(60, [], { standing: 'paused' })).toBe('clear');
    expect(sayOf(60, [], { joinedAt: null })).toBe('clear');
  });
});

describe('limit-ending', () => {
  const limit = (over: Partial<HistoryLimit> = {}): HistoryLimit => ({
    tissue: null,
    region: 'elbow-inner',
    side: 'right',
    rule: 'reduced',
    percent: 50,
    from: day(0),
    until: day(20),
    who: 'physiotherapist',
    ...over,
  });
  const sayOf = (days: number, over: Partial<HistoryLimit> = {}) =>
    said(theOutcome(judge(limitEnding, aHistory({ limits: [limit(over)] }), days)));
  it.each([
    [16, 'clear'],
    [17, 'flagged watch'],
    [20, 'flagged watch'],
    [21, 'clear'],
  ])('on day %i a limit until day 20 gives %s', (days, expected) => {
    expect(sayOf(days)).toBe(expected);
  });
  it('says nothing of an open limit or one that has not begun', () => {
    expect(sayOf(18, { until: null })).toBe('clear');
    expect(sayOf(18, { from: day(19) })).toBe('clear');
  });
  it('judges the newer of two alike that stand, whatever the order of rows', () => {
    const rows = [limit(), limit({ who: 'coach', from: day(2) }), limit({ who: 'doctor', from: day(19) })];
    for (const limits of [rows, [...rows].reverse()]) {
      const finding = theFinding(judge(limitEnding, aHistory({ limits }), 18));
      expect(finding.sentence).toContain('set by coach.');
    }
  });
});

describe('too-many-goals', () => {
  const ladders = ['one', 'two', 'three', 'four', 'five'];
  const rungs = ladders.map((id) => aRung({ id, ladderId: id }));
  const drills = (count: number) => ladders.slice(0, count).map((rungId) => aPlanItem({ rungId }));
  const sayOf = (plan: Parameters<typeof aPlan>[0], over: Parameters<typeof aHistory>[0] = {}) =>
    said(theOutcome(judge(tooManyGoals, aHistory({ rungs, plans: [aPlan(plan)], ...over }), 0)));
  it('is more than two skills or more than four strength drills a session', () => {
    expect(sayOf({ skillsInFocus: ['a', 'b'], items: drills(4) })).toBe('clear');
    expect(sayOf({ skillsInFocus: ['a', 'b', 'c'], items: drills(4) })).toBe('flagged watch');
    expect(sayOf({ skillsInFocus: ['a'], items: drills(5) })).toBe('flagged watch');
  });
  it('counts drills by session, and neither balance nor mobility', () => {
    const apart = drills(5).map((item, index) => ({ ...item, session: index === 0 ? 'B' : 'A' }));
    expect(sayOf({ items: apart })).toBe('clear');
    const easy = rungs.map((rung, index) => (index === 0 ? { ...rung, family: 'balance' as const } : rung));
    expect(sayOf({ items: drills(5) }, { rungs: easy })).toBe('clear');
  });
  it('speaks from the first save of a plan that starts later', () => {
    expect(sayOf({ from: day(5), skillsInFocus: ['a', 'b', 'c'] })).toBe('flagged watch');
  });
});
