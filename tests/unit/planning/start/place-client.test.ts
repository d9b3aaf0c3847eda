import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { placeClient } from '#lib/planning/start/place-client.ts';
import { openedBy } from '#lib/planning/start/start-openings.ts';
import type { StartAnswer, StartFacts } from '#lib/planning/start/start-types.ts';
import { answer, asked, at, cannot, FACTS, hurts, READY } from './start-fixture.ts';

const place = (keys: string[], answers: StartAnswer[], over: Partial<StartFacts> = {}) =>
  placeClient(asked(...keys), answers, { ...FACTS, ...over });
const rungs = (keys: string[], answers: StartAnswer[], over: Partial<StartFacts> = {}) =>
  Object.fromEntries(
    place(keys, answers, over).map(({ ladder, side, rung }) => [`${ladder.id} ${side}`, rung?.id ?? null]),
  );

describe('the rung', () => {
  test('is the highest whose pass mark was met', () => {
    // H2.1 asks 2 x 60 s, H2.3 3 x 45 s.
    expect(rungs(['H2.1', 'H2.3'], [answer('H2.1', [60, 60]), answer('H2.3', [45, 45, 45])])).toEqual({
      'H2 both': 'H2.3',
    });
  });

  test.each([
    // 3 x 45 s = 135 s; three quarters are 101.25 s.
    [[34, 34, 34], 'H2.3'],
    [[34, 34, 33.25], 'H2.3'],
    [[34, 34, 33], 'H2.1'],
    [[45, 45], 'H2.1'],
  ])('is in reach from three quarters of the pass mark: %s', (values, rung) => {
    expect(rungs(['H2.1', 'H2.3'], [answer('H2.1', [60, 60]), answer('H2.3', values)])).toEqual({
      'H2 both': rung,
    });
  });

  test('is told apart by one test of a drill with several pass marks', () => {
    // Heel pull: H3.3 4 x 10 s, H3.4 3 x 20 s, H3.5 2 x 30 s.
    const held = (seconds: number) =>
      rungs(
        ['H3.1', 'H3.3'],
        [...READY, answer('H3.1', [10, 10]), answer('H3.3', [seconds, seconds, seconds])],
      )['H3 both'];
    expect([7, 8, 14, 15, 20, 23, 30].map(held)).toEqual([
      'H3.1',
      'H3.3',
      'H3.3',
      'H3.4',
      'H3.4',
      'H3.5',
      'H3.5',
    ]);
  });

  test('lies below one that was not clean, however long', () => {
    const answers = [answer('H2.1', [60, 60]), answer('H2.3', [45, 45, 45], { clean: false })];
    expect(rungs(['H2.1', 'H2.3'], answers)).toEqual({ 'H2 both': 'H2.1' });
  });

  test('lies below one that hurt; pain of 2 does not count as hurting, 3 does', () => {
    const sore = (pain: number) => [answer('H2.1', [60, 60]), answer('H2.3', [45, 45, 45], { pain })];
    expect(rungs(['H2.1', 'H2.3'], sore(2))).toEqual({ 'H2 both': 'H2.3' });
    expect(rungs(['H2.1', 'H2.3'], sore(3))).toEqual({ 'H2 both': 'H2.1' });
    expect(place(['H2.1', 'H2.3'], sore(3))[0]?.doubts).toEqual([
      'It hurt: 3 of 10 on Box pike, feet hip-high, hips over hands.',
    ]);
  });

  test('is none where the easiest hurt or cannot be done', () => {
    expect(rungs(['H2.1'], [hurts('H2.1', 4)])).toEqual({ 'H2 both': null });
    expect(rungs(['H2.1'], [cannot('H2.1')])).toEqual({ 'H2 both': null });
  });

  test('is the first where the easiest test fell short, or a harder one was the easiest asked', () => {
    expect(rungs(['H2.1'], [answer('H2.1', [10, 5])])).toEqual({ 'H2 both': 'H2.1' });
    expect(rungs(['H2.3'], [cannot('H2.3')])).toEqual({ 'H2 both': 'H2.1' });
  });

  test('differs by side where sides do', () => {
    const answers = [answer('X1.2', [172], { side: 'left' }), answer('X1.2', [155], { side: 'right' })];
    expect(rungs(['X1.2'], answers)).toEqual({ 'X1 left': 'X1.3', 'X1 right': 'X1.1' });
  });

  test('of both hands holds for both sides: the side further down decides', () => {
    // H1.1 is done with both hands, H1.2 on each side.
    const sides = (left: StartAnswer, right: StartAnswer) =>
      place(['H1.1', 'H1.2'], [answer('H1.1', [5, 5]), left, right]).map(({ side, rung, doubts }) => [
        side,
        rung?.id,
        doubts,
      ]);
    const done = (side: 'left' | 'right') => answer('H1.2', [3, 3, 3], { side });
    expect(sides(done('left'), done('right'))).toEqual([
      ['left', 'H1.2', []],
      ['right', 'H1.2', []],
    ]);
    expect(sides(done('left'), cannot('H1.2', { side: 'right' }))).toEqual([
      ['both', 'H1.1', ['The sides differ: the right one decides for both.']],
    ]);
    expect(sides(cannot('H1.2', { side: 'left' }), cannot('H1.2', { side: 'right' }))).toEqual([
      ['both', 'H1.1', []],
    ]);
  });

  test('of a range that cannot be reached is the first, to work towards', () => {
    expect(rungs(['X3.1'], [cannot('X3.1')])).toEqual({ 'X3 both': 'X3.1' });
  });

  test('of a range that goes down is the lowest reached', () => {
    expect(rungs(['X3.1'], [answer('X3.1', [-12])])).toEqual({ 'X3 both': 'X3.3' });
    expect(rungs(['X3.1'], [answer('X3.1', [4])])).toEqual({ 'X3 both': 'X3.1' });
    expect(rungs(['X3.1'], [answer('X3.1', [30])])).toEqual({ 'X3 both': 'X3.1' });
  });
});

describe('doubt', () => {
  test('is said when nothing was answered: the first rung', () => {
    const [one] = place(['H2.1', 'H2.3'], []);
    expect(one).toMatchObject({
      rung: at('H2.1').rung,
      why: 'No result: the first rung until there is one.',
    });
    expect(one?.doubts).toEqual(['Nothing was answered on this ladder.']);
  });

  test('is said when a harder one was done and an easier one not: the easier decides', () => {
    const [one] = place(['H2.1', 'H2.3'], [cannot('H2.1'), answer('H2.3', [45, 45, 45])]);
    expect(one?.rung).toBeNull();
    expect(one?.doubts[0]).toContain('Results contradict each other');
  });
});

describe('openings', () => {
  test('a rung is never proposed before what must stand stands', () => {
    const held = [answer('H3.1', [10, 10]), answer('H3.3', [30, 30, 30])];
    expect(rungs(['H3.1', 'H3.3'], held)).toEqual({ 'H3 both': null });
    expect(place(['H3.1', 'H3.3'], held)[0]?.why).toMatch(/^Not open yet/);
    expect(rungs(['H3.1', 'H3.3'], [...READY, ...held])).toEqual({ 'H3 both': 'H3.5' });
  });

  test('one side that is short keeps a two-handed rung closed', () => {
    const oneShort = READY.map((one) =>
      one.ladderId === 'X1' && one.side === 'right' ? { ...one, values: [159] } : one,
    );
    const held = [answer('H4.1', [10, 10]), answer('H4.3', [30, 30, 30])];
    expect(rungs(['H4.1', 'H4.3'], [...READY, ...held])).toEqual({ 'H4 both': 'H4.5' });
    expect(rungs(['H4.1', 'H4.3'], [...oneShort, ...held])).toEqual({ 'H4 both': null });
  });

  test('in reach is not enough to open', () => {
    const almost = READY.map((one) => (one.ladderId === 'H2' ? { ...one, values: [45, 45, 40] } : one));
    const held = [answer('H4.1', [10, 10])];
    expect(rungs(['H4.1'], [...READY, ...held])).toEqual({ 'H4 both': 'H4.1' });
    expect(rungs(['H4.1'], [...almost, ...held])).toEqual({ 'H4 both': null });
  });

  test('a support at hand opens, and is said', () => {
    const narrow = READY.filter(({ ladderId }) => ladderId !== 'X2');
    const held = [answer('H3.1', [10, 10])];
    expect(rungs(['H3.1'], [...narrow, ...held])).toEqual({ 'H3 both': null });
    const [one] = place(['H3.1'], [...narrow, ...held], { kit: ['wedge'] });
    expect(one).toMatchObject({ rung: at('H3.1').rung, on: 'wedge' });
    expect(one?.why).toContain('on a wedge');
  });

  test('standing above a rung in training counts as having it', () => {
    const standing = [
      { ladderId: 'H2', side: 'both' as const, rungId: 'H2.4' },
      { ladderId: 'H1', side: 'both' as const, rungId: 'H1.3' },
      { ladderId: 'X1', side: 'both' as const, rungId: 'X1.3' },
      { ladderId: 'X2', side: 'both' as const, rungId: 'X2.4' },
    ];
    expect(rungs(['H4.1'], [answer('H4.1', [10, 10])], { standing })).toEqual({ 'H4 both': 'H4.1' });
  });

  test('under 18 some open only when the coach allows it', () => {
    const backLever = { kit: ['rings', 'bar'], under18: true };
    const ladder = FACTS.library.find(({ openings }) =>
      openings.some(({ under18CoachTick }) => under18CoachTick),
    );
    const key = ladder?.openings.find(({ under18CoachTick }) => under18CoachTick)?.opens ?? '';
    expect(openedBy(at(key), [], { ...FACTS, ...backLever })).toMatchObject({ open: false });
  });
});

test('whatever is answered, nothing is proposed that is not open, and nothing above a result', () => {
  const keys = ['X1.2', 'X2.3', 'H1.2', 'H2.1', 'H2.3', 'H2.6', 'H3.1', 'H3.3', 'H5.1'];
  const tests = asked(...keys);
  const any = fc.array(
    fc.record({
      key: fc.constantFrom(...keys),
      side: fc.constantFrom('both' as const, 'left' as const, 'right' as const),
      outcome: fc.constantFrom('done' as const, 'cannot' as const, 'hurts' as const),
      values: fc.array(fc.integer({ min: 0, max: 180 }), { minLength: 1, maxLength: 3 }),
      clean: fc.constantFrom(true, false, null),
    }),
    { maxLength: 20 },
  );
  fc.assert(
    fc.property(any, fc.subarray(['wedge', 'parallel-bars']), (said, kit) => {
      const answers = said.map(({ key, ...over }) =>
        answer(key, over.values, { ...over, pain: over.outcome === 'hurts' ? 5 : null, tried: 5 }),
      );
      const facts = { ...FACTS, kit };
      for (const { ladder, rung, on } of placeClient(tests, answers, facts)) {
        if (!rung) continue;
        const opened = openedBy({ ladder, rung }, answers, facts);
        expect(opened).toEqual({ open: true, on });
      }
    }),
    { numRuns: 300 },
  );
});
