import { expect, test } from 'vitest';
import { type PlannedDrill, planWarnings, skillsInFocus } from '#lib/views/plan-warnings.ts';

const drills = (count: number, over: Partial<PlannedDrill> = {}): PlannedDrill[] =>
  Array.from({ length: count }, (_, index) => ({
    session: 'A',
    ladderId: `ladder-${index}`,
    skill: 'Planche',
    family: 'straight-arm-push',
    ...over,
  }));

test('four strength drills a session are fine, five are said', () => {
  expect(planWarnings(drills(4))).toEqual([]);
  expect(planWarnings(drills(5))).toEqual([
    'Session A has 5 strength drills; more than 4 is usually too many.',
  ]);
});

test('two rungs of one ladder are one drill; balance and mobility are no strength', () => {
  expect(planWarnings(drills(6, { ladderId: 'same' }))).toEqual([]);
  expect(planWarnings(drills(6, { family: 'balance' }))).toEqual([]);
});

test('two skills are fine, three are said; mobility and preparation are none', () => {
  const of = (...skills: string[]) => skills.flatMap((skill) => drills(1, { skill, session: skill }));
  expect(planWarnings(of('Planche', 'Front lever'))).toEqual([]);
  expect(planWarnings(of('Planche', 'Front lever', 'Muscle-up'))[0]).toMatch(/^3 skills in focus/);
  expect(
    skillsInFocus([
      ...of('Every skill on the hands'),
      ...drills(1, { family: 'mobility', skill: 'Pancake' }),
    ]),
  ).toEqual([]);
});
