import { describe, expect, it } from 'vitest';
import { asksOfSkill } from '#lib/planning/gaps/asks-of-skill.ts';
import { usualAim } from '#lib/planning/gaps/usual-aim.ts';
import { GAP_LIBRARY } from '#tests/fixtures/gap-library.ts';

const asks = (aim: string, kit: string[] = []) => {
  const skillId = GAP_LIBRARY.find(({ rungs }) => rungs.some(({ id }) => id === aim))?.skillId ?? '';
  return asksOfSkill(GAP_LIBRARY, { skillId, aimRungId: aim, kit });
};
const of = (aim: string, role: string, kit: string[] = []) =>
  asks(aim, kit)
    .filter((ask) => ask.role === role)
    .map(({ rung }) => rung.id);

describe('what a skill asks', () => {
  it('the free press: its parts, what its openings name, and the mobility that belongs', () => {
    expect(of('P4.4', 'aim')).toEqual(['P4.4']);
    expect(of('P4.4', 'part')).toEqual(['PT.2', 'P1.5', 'P2.3', 'P3.5']);
    expect(of('P4.4', 'opening')).toEqual(['H1.4', 'H2.6', 'H3.3', 'H4.3', 'H5.4', 'X1.2', 'X2.3']);
    expect(of('P4.4', 'mobility')).toEqual(['X3.2', 'X4.2']);
  });
  it('an aim lower on the ladder asks only what opens it', () => {
    expect(of('U1.6', 'opening')).toContain('H2.6');
    expect(of('U1.5', 'opening')).toEqual([]);
  });
  it('the free hold does not ask for the shapes that it opens, nor for what comes after', () => {
    expect(asks('H5.4').map(({ ladder }) => ladder.id)).not.toContain('H6');
    expect(of('H5.4', 'part')).toEqual(['H1.4', 'H2.3', 'H3.3', 'H4.3']);
  });
  it('with bars at hand the wrist need not bend 90 degrees', () => {
    expect(of('H5.4', 'opening')).toContain('X2.3');
    expect(of('H5.4', 'opening', ['parallel-bars'])).not.toContain('X2.3');
    expect(of('H5.4', 'opening', ['box'])).toContain('X2.3');
  });
  it('of rungs of which any will do, the one that asks less: five sets of pull-ups, not chest to bar', () => {
    expect(of('MU.6', 'opening')).toContain('PU.7');
    expect(of('MU.6', 'opening').some((id) => id.startsWith('CB'))).toBe(false);
  });
  it('says why it asks', () => {
    const why = asks('P4.4').find(({ rung }) => rung.id === 'P2.3')?.why;
    expect(why).toBe(
      'The free lift opens with the free hold of 30 s, the under-balanced hold and the toe float.',
    );
  });
  it('asks nothing for an aim of another skill, or for one that is not there', () => {
    expect(asksOfSkill(GAP_LIBRARY, { skillId: 'Planche', aimRungId: 'P4.4', kit: [] })).toEqual([]);
    expect(asksOfSkill(GAP_LIBRARY, { skillId: 'Planche', aimRungId: 'none', kit: [] })).toEqual([]);
  });
});

it('begins with the last rung of the ladder that most has to stand before', () => {
  expect(usualAim(GAP_LIBRARY, 'Press to handstand')?.id).toBe('P4.7');
  expect(usualAim(GAP_LIBRARY, 'Handstand')?.id).toBe('H5.6');
  expect(usualAim(GAP_LIBRARY, 'Pull-up')?.id).toBe('PU.8');
  expect(usualAim(GAP_LIBRARY, 'none')).toBeUndefined();
});
