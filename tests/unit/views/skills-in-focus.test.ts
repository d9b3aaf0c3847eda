import { expect, test } from 'vitest';
import { skillsInFocus } from '#lib/views/skills-in-focus.ts';

test('each skill once, in the order of the drills; mobility and preparation for all skills are none', () => {
  const strength = { family: 'straight-arm-push' } as const;
  expect(
    skillsInFocus([
      { skill: 'Every skill on the hands', ...strength },
      { skill: 'Planche', ...strength },
      { skill: 'Mobility', family: 'mobility' },
      { skill: 'Front lever', ...strength },
      { skill: 'Planche', family: 'balance' },
    ]),
  ).toEqual(['Planche', 'Front lever']);
});
