import { expect, test } from 'vitest';
import type { FormPart } from '#lib/views/gaps/gap-form.ts';
import { refusedParts } from '#lib/views/gaps/refused-parts.ts';

const part = (ladderId: string, name: string, sides: ('both' | 'left' | 'right')[]) =>
  ({ ladderId, part: name, sides: sides.map((side) => ({ side })) }) as FormPart;
const PARTS = [part('L1', 'Top', ['both']), part('L2', 'Bottom', ['left', 'right'])];

test('a refused field of an assessment is called by part, side and field, with its control', () => {
  expect(
    refusedParts(
      {
        'parts.0.sides.0.pain': 'from 0 to 10',
        'parts.1.sides.1.rungId': 'choose the rung this result was on',
        'parts.1.askedRungId': 'choose the rung that is asked',
        sessions: 'choose at least one session to put drills in',
        'parts.7.sides.0.pain': 'from 0 to 10',
      },
      PARTS,
    ),
  ).toEqual([
    { id: 'L1-both-pain', name: 'Top, pain, 0-10', message: 'from 0 to 10' },
    {
      id: 'L2-right-rung',
      name: 'Bottom, right, last result on',
      message: 'choose the rung this result was on',
    },
    { id: 'L2-asked', name: 'Bottom, asked', message: 'choose the rung that is asked' },
    {
      id: 'session-A',
      name: 'Sessions to put drills in',
      message: 'choose at least one session to put drills in',
    },
    { id: null, name: '', message: 'from 0 to 10' },
  ]);
});
