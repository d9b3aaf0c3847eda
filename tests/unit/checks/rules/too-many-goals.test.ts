import { describe, expect, it } from 'vitest';
import { tooManyGoals } from '#lib/checks/rules/too-many-goals.ts';
import type { HistoryPlan } from '#lib/domain/history.ts';
import { judge, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aHistory, aPlan, aPlanItem, aRung, day } from '#tests/fixtures/history-builders.ts';

const LADDERS = ['one', 'two', 'three', 'four', 'five'];
const RUNGS = LADDERS.map((id) => aRung({ id, ladderId: id }));
const drills = (session: string, count = 5) =>
  LADDERS.slice(0, count).map((rungId) => aPlanItem({ rungId, session }));
const TWO = ['a', 'b'];
const THREE = [...TWO, 'c'];
const planned = (plans: HistoryPlan[], days = 0) =>
  judge(tooManyGoals, aHistory({ rungs: RUNGS, plans }), days);
const saidOf = (plans: HistoryPlan[], days = 0) => theOutcome(planned(plans, days)).status;

describe('too-many-goals: what it says', () => {
  it('names the skills, the drills and the fullest session', () => {
    const skills = theFinding(planned([aPlan({ skillsInFocus: THREE, items: drills('A', 4) })]));
    expect(skills.sentence).toBe(
      'The plan asks for **3 skills** in focus at once; at most 2 and 4 usually go well.',
    );
    expect(skills.evidence).toEqual({ skills: 3, drills: 4, session: null });
    const both = theFinding(
      planned([aPlan({ skillsInFocus: THREE, items: [...drills('A', 4), ...drills('B')] })]),
    );
    expect(both.sentence).toBe(
      'The plan asks for **3 skills** in focus at once and **5 strength drills** in session B; at most 2 and 4 usually go well.',
    );
    expect(both.evidence).toEqual({ skills: 3, drills: 5, session: 'B' });
  });
  it('names the first of two sessions that are as full, in whatever order the plan has them', () => {
    for (const items of [
      [...drills('A'), ...drills('B')],
      [...drills('B'), ...drills('A')],
    ]) {
      expect(theFinding(planned([aPlan({ items })])).evidence.session).toBe('A');
    }
  });
});

describe('too-many-goals: which plan', () => {
  const next = (version: number, from: number, skillsInFocus: string[]) =>
    aPlan({ version, from: day(from), skillsInFocus });
  /** In either order. */
  const both = (one: HistoryPlan, two: HistoryPlan) => [saidOf([one, two]), saidOf([two, one])];
  it('looks at the next plan while none has begun: the one that starts first', () => {
    expect(both(next(1, 5, TWO), next(2, 9, THREE))).toEqual(['clear', 'clear']);
    expect(both(next(1, 5, THREE), next(2, 9, TWO))).toEqual(['flagged', 'flagged']);
    expect(both(next(2, 5, TWO), next(1, 9, THREE))).toEqual(['clear', 'clear']);
  });
  it('takes the later version of two that start on one day', () => {
    expect(both(next(1, 5, TWO), next(2, 5, THREE))).toEqual(['flagged', 'flagged']);
    expect(both(next(1, 5, THREE), next(2, 5, TWO))).toEqual(['clear', 'clear']);
  });
  it('leaves out a plan that a later version overtook before its first day', () => {
    const ended = aPlan({ version: 2, from: day(2), until: day(3), skillsInFocus: TWO });
    expect(both(next(1, 5, THREE), ended)).toEqual(['clear', 'clear']);
    expect(saidOf([next(1, 5, THREE), ended], 4)).toBe('clear');
    expect(saidOf([next(3, 5, THREE), ended], 4)).toBe('flagged');
  });
  it('looks at the plan in force before the next one', () => {
    expect(saidOf([aPlan({ skillsInFocus: TWO }), next(2, 1, THREE)])).toBe('clear');
    expect(saidOf([aPlan({ skillsInFocus: TWO }), next(2, 1, THREE)], 1)).toBe('flagged');
  });
  it('asks for nothing from the first day on of a plan that was ended before it', () => {
    const takenBack = aPlan({ from: day(5), until: day(4), skillsInFocus: THREE });
    expect(saidOf([takenBack], 5)).toBe('clear');
  });
});
