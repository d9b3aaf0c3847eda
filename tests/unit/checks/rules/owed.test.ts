import { describe, expect, it } from 'vitest';
import { askedNoAnswer } from '#lib/checks/rules/asked-no-answer.ts';
import { filmWaiting } from '#lib/checks/rules/film-waiting.ts';
import { notSeen } from '#lib/checks/rules/not-seen.ts';
import { tooManyGoals } from '#lib/checks/rules/too-many-goals.ts';
import type { HistoryFilm, HistoryStartTests } from '#lib/domain/history.ts';
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
  it('takes a look at this very moment for a look, and a later one not', () => {
    expect(sayOf([film({ receivedAt: at(5), lookedAt: at(11) })])).toBe('clear');
    expect(sayOf([film({ receivedAt: at(5), lookedAt: at(11, '02:01') })])).toBe('flagged act');
  });
  it('says how long the longest has waited, and how many more, one that came this moment too', () => {
    const finding = (films: HistoryFilm[]) => theFinding(judge(filmWaiting, aHistory({ films }), 10));
    const one = film({ receivedAt: at(10) });
    const now = film({ id: 'film-2', receivedAt: at(11) });
    const later = film({ id: 'film-3', receivedAt: at(11, '02:01') });
    expect(finding([one, later]).sentence).toBe(
      'A film has waited **24 h** of answering hours to be looked at.',
    );
    expect(finding([now, one, later]).sentence).toBe(
      'A film has waited **24 h** of answering hours to be looked at, and 1 more film.',
    );
    expect(finding([now, one, later]).evidence).toEqual({ film: 'film-1', hours: 24, open: 2 });
  });
  it('names one and the same of two that came together', () => {
    const films = ['film-1', 'film-2'].map((id) => film({ id, receivedAt: at(10) }));
    for (const rows of [films, [...films].reverse()])
      expect(theFinding(judge(filmWaiting, aHistory({ films: rows }), 10)).evidence.film).toBe('film-1');
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
    expect(sayOf(8, { receivedAt: at(9) })).toBe('clear');
    expect(sayOf(8, { receivedAt: at(9, '02:01') })).toBe('flagged watch');
  });
  it('does not take the day of asking off, also when it was a day off', () => {
    const absences = [{ from: day(0), to: day(0), kind: 'illness' as const }];
    expect(sayOf(5, {}, { absences })).toBe('flagged watch');
  });
  it('says what was asked for, and how many more, one asked for this moment too', () => {
    const finding = (films: HistoryFilm[]) => theFinding(judge(askedNoAnswer, aHistory({ films }), 5));
    const now = film({ id: 'film-2', askedAt: at(6) });
    const later = film({ id: 'film-3', askedAt: at(6, '02:01') });
    expect(finding([later, film({ words: '' })]).sentence).toBe(
      'A film was asked for **5 days ago**, on Mon 2 Mar, and has not come.',
    );
    expect(finding([now, film({}), later]).sentence).toBe(
      'A film was asked for **5 days ago**, on Mon 2 Mar (One set from behind.), and has not come, and 1 more.',
    );
    expect(finding([now, film({}), later]).evidence).toEqual({ film: 'film-1', days: 5, open: 2 });
  });
  it('names one and the same of two asked for together', () => {
    const films = ['film-1', 'film-2'].map((id) => film({ id }));
    for (const rows of [films, [...films].reverse()])
      expect(theFinding(judge(askedNoAnswer, aHistory({ films: rows }), 5)).evidence.film).toBe('film-1');
  });
});

describe('asked-no-answer, start tests', () => {
  const tests = (over: Partial<HistoryStartTests> = {}): HistoryStartTests => ({
    id: 'tests-1',
    askedAt: at(0, '12:00'),
    movedAt: null,
    doneAt: null,
    ...over,
  });
  const on = (days: number, startTests: HistoryStartTests[], films: HistoryFilm[] = []) =>
    judge(askedNoAnswer, aHistory({ startTests, films }), days);
  const sayOf = (days: number, over: Partial<HistoryStartTests> = {}) =>
    said(theOutcome(on(days, [tests(over)])));
  it('speak on the fifth day; of half-answered ones time runs from the newest answer', () => {
    expect([4, 5].map((days) => sayOf(days))).toEqual(['clear', 'flagged watch']);
    const moved = { movedAt: at(3, '12:00') };
    expect([7, 8].map((days) => sayOf(days, moved))).toEqual(['clear', 'flagged watch']);
  });
  it('take no answer that came later, and are over when nothing is left to answer', () => {
    expect(sayOf(5, { movedAt: at(6, '02:01') })).toBe('flagged watch');
    expect(sayOf(8, { doneAt: at(9) })).toBe('clear');
    expect(sayOf(8, { doneAt: at(9, '02:01') })).toBe('flagged watch');
  });
  it('say what was asked for, beside a film that was', () => {
    expect(theFinding(on(6, [tests()], [film({ askedAt: at(1, '12:00') })]))).toMatchObject({
      sentence:
        'Start tests were asked for, or last moved, **6 days ago**, on Mon 2 Mar, and are not finished, and 1 more.',
      short: 'start tests asked 6 days ago',
      evidence: { tests: 'tests-1', days: 6, open: 2 },
    });
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
  it('counts a look at this very moment, and no later one', () => {
    expect(sayOf(40, [at(41)])).toBe('clear');
    expect(sayOf(40, [at(41, '02:01')])).toBe('flagged watch');
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
