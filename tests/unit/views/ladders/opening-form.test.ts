import { describe, expect, it } from 'vitest';
import { newOpening, openingsForm } from '#lib/views/ladders/opening-form.ts';
import { openingLines } from '#lib/views/ladders/opening-in-words.ts';
import { ladderOf, rungOf } from '#tests/unit/planning/ladders/ladder-builders.ts';

const opening = {
  opens: 'b',
  needsAll: [['x', 'gone'], ['y']],
  orOnSupports: ['wedge' as const],
  under18CoachTick: false,
  words: 'Asks for X.',
};
const ladder = ladderOf([rungOf('a'), rungOf('r', { retired: true }), rungOf('b')], {
  openings: [opening, { ...opening, opens: 'r' }],
});
const team = ['x', 'y'].map((id, index) => ({
  id,
  ladderId: 'lean',
  ladder: 'Lean',
  skill: 'Planche',
  position: index + 1,
  name: id.toUpperCase(),
}));

describe('the openings of a ladder', () => {
  it('stand on the form with the rungs that can open and all that can be asked for', () => {
    expect(openingsForm(ladder, team)).toEqual({
      openings: ladder.openings,
      own: [
        { id: 'a', label: '1 Rung a' },
        { id: 'b', label: '2 Rung b' },
      ],
      ladders: [
        {
          id: 'lean',
          name: 'Lean, Planche',
          rungs: [
            { id: 'x', label: 'X (Lean, rung 1)' },
            { id: 'y', label: 'Y (Lean, rung 2)' },
          ],
        },
      ],
    });
  });

  it('begin anew with the easiest rung that none opens yet, and ask for nothing chosen', () => {
    const form = openingsForm(ladder, team);
    expect(newOpening(form)).toMatchObject({ opens: 'a', needsAll: [['']], words: '' });
    const all = [...form.openings, { ...opening, opens: 'a' }];
    expect(newOpening({ ...form, openings: all })).toMatchObject({ opens: 'a' });
  });

  it('are read for the rungs in use', () => {
    const names = new Map(team.map((rung) => [rung.id, rung.name]));
    expect(openingLines(ladder, names)).toEqual([
      {
        rung: '2 Rung b',
        asks: 'X or a rung not in use and Y; or at once on a wedge',
        words: 'Asks for X.',
      },
    ]);
  });
});
