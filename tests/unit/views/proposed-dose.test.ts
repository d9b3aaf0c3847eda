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
    estimate: '',
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

it('proposes nothing at all while a danger sign is not cleared', () => {
  const history = aHistory({ rungs: [RUNG] });
  const of = (danger?: string) =>
    proposedDoses({ history, rungs: [RUNG], today: day(8), danger })(RUNG.id, 'both');
  expect(of('numb or tingling, right')).toEqual({ sore: 'numb or tingling, right, not cleared yet' });
  expect(of()).toHaveProperty('dose');
});

const hold = (position: number) =>
  aRung({
    id: `tuck-${position}`,
    ladderId: 'planche',
    position,
    family: 'straight-arm-push',
    measure: 'hold',
    pass: { sets: 4, target: 15, days: 2, tries: null },
    share: 1,
    weights: { 'shoulder-forward': 0.4 + position / 10 },
  });
const HOLDS = [hold(1), hold(2), hold(3)];
const onHolds = (held: [position: number, seconds: number[]][]) =>
  proposedDoses({
    history: aHistory({
      rungs: HOLDS,
      checkIns: held.map(([position, seconds], index) =>
        aCheckIn(index * 2, { sets: sets(seconds, { rungId: `tuck-${position}`, planned: 15 }) }),
      ),
    }),
    rungs: HOLDS,
    today: day(20),
  });

it('of a pyramid the easier half is dosed with three sets, the harder from 6 s until it has results', () => {
  const doseOf = onHolds([[1, [15, 14]]]);
  expect(doseOf('tuck-1', 'both', 'tuck-2')).toMatchObject({
    dose: '3 x 15 s',
    why: expect.stringContaining('a pyramid'),
  });
  expect(doseOf('tuck-2', 'both', 'tuck-1')).toMatchObject({
    dose: '4 x 6 s',
    why: expect.stringContaining('a pyramid'),
  });
  expect(doseOf('tuck-1', 'both')).toMatchObject({ dose: '4 x 15 s' });
  const tried = onHolds([
    [1, [15, 14]],
    [2, [9, 8]],
  ]);
  expect(tried('tuck-2', 'both', 'tuck-1')).toMatchObject({ dose: '4 x 9 s' });
});

it('estimates a hold never done as a range with its doubt, and no longer once it was tried', () => {
  expect(onHolds([[1, [15]]])('tuck-2', 'both')).toMatchObject({
    estimate: expect.stringMatching(/^Best hold there, by models: \d+ to \d+ s.*An estimate/),
  });
  expect(onHolds([[2, [9]]])('tuck-2', 'both')).toMatchObject({ estimate: '' });
  expect(onHolds([])('tuck-2', 'both')).toMatchObject({ estimate: '' });
});
