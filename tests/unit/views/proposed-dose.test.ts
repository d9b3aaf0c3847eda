import { expect, it } from 'vitest';
import { proposedDoses } from '#lib/views/proposed-dose.ts';
import { aCheckIn, aHistory, aPain, aRung, day, sets } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ pass: { sets: 4, target: 8, days: 2, tries: null } });
const doses = (values: number[][]) =>
  proposedDoses({
    history: aHistory({
      rungs: [RUNG],
      checkIns: values.map((each, index) => aCheckIn(index * 2, { sets: sets(each, { planned: 5 }) })),
    }),
    rungs: [RUNG],
    today: day(20),
  });

it('proposes from the last results, with what it is and that no source stands behind it', () => {
  expect(doses([[3, 3, 3, 2]])(RUNG.id, 'both')).toEqual({
    sets: '4',
    target: '3',
    dose: '4 x 3',
    why: 'strength: 5 clean reps, 4-5 sets; common practice, no source',
  });
  // Two whole days: a fifth set.
  const whole = [5, 5, 5, 5];
  expect(doses([whole, whole])(RUNG.id, 'both')).toMatchObject({ dose: '5 x 5' });
});

it('has a first dose for a rung without results, and none for one it does not know', () => {
  expect(doses([])(RUNG.id, 'both')).toMatchObject({ dose: '4 x 5' });
  expect(doses([])('gone', 'both')).toBeUndefined();
});

it('proposes nothing for what hurts over 2 of 10 in the last fortnight', () => {
  const after = (value: number, days: number, weights = RUNG.weights) => {
    const rung = { ...RUNG, weights };
    const checkIns = [aCheckIn(6, { pain: [aPain(value)] })];
    return proposedDoses({ history: aHistory({ rungs: [rung], checkIns }), rungs: [rung], today: day(days) })(
      rung.id,
      'both',
    );
  };
  expect(after(3, 10)).toEqual({ sore: 'right elbow, inner, 3 of 10 on Sun 8 Mar' });
  expect(after(2, 10)).toHaveProperty('dose');
  expect(after(3, 19)).toHaveProperty('sore');
  expect(after(3, 20)).toHaveProperty('dose');
  expect(after(3, 10, { neck: 1 })).toHaveProperty('dose');
});
