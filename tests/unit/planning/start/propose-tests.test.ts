import { expect, test } from 'vitest';
import { proposeTests } from '#lib/planning/start/propose-tests.ts';
import { PROPOSE } from './start-fixture.ts';

const handstand = { skillId: 'Handstand', aimRungId: 'H5.4' };
const keys = (...aims: (typeof handstand)[]) => proposeTests(aims, PROPOSE).map(({ rungId }) => rungId);

test('the free hold asks few tests: ranges first, then the drills that openings name, and an easier one before them', () => {
  expect(keys(handstand)).toEqual([
    'X1.4',
    'X2.4',
    'H1.2',
    'H1.4',
    'H2.1',
    'H2.3',
    'H3.1',
    'H3.5',
    'H4.1',
    'H4.5',
    'H5.6',
  ]);
});

test('one test a drill, whatever its pass marks: the free hold stands for all six rungs', () => {
  const [free] = proposeTests([handstand], PROPOSE).filter(({ ladderId }) => ladderId === 'H5');
  expect(free).toMatchObject({ rungId: 'H5.6', sets: 3 });
  expect(free?.rung.id).toBe('H5.1');
});

test('two skills ask their shared parts once, at the harder of both', () => {
  const press = { skillId: 'Press to handstand', aimRungId: 'P4.6' };
  const both = keys(handstand, press);
  expect(new Set(both).size).toBe(both.length);
  expect(both).toContain('P4.7');
  expect(both.filter((key) => key.startsWith('H5'))).toEqual(['H5.6']);
});

test.each(['H5.4', 'P4.6', 'PL.2', 'U1.8', 'CB.5', 'OA.4'])(
  'at most three drills a ladder, each once: %s',
  (aimRungId) => {
    const ladder = PROPOSE.library.find(({ rungs }) => rungs.some(({ id }) => id === aimRungId));
    const tests = proposeTests([{ skillId: ladder?.skillId ?? '', aimRungId }], PROPOSE);
    expect(tests.length).toBeGreaterThan(0);
    for (const { id } of PROPOSE.library)
      expect(tests.filter(({ ladderId }) => ladderId === id).length).toBeLessThanOrEqual(3);
    expect(tests.some(({ ladderId }) => ladderId.startsWith('W'))).toBe(false);
  },
);

test.each([
  [
    ['PL.4', 'PL.6'],
    ['PL.1', 'PL.4', 'PL.6'],
  ],
  [
    ['PL.4', 'PL.5', 'PL.6', 'PL.7'],
    ['PL.4', 'PL.5', 'PL.6', 'PL.7'],
  ],
])('three drills a ladder are enough, but what openings name is asked: %s', (named, asked) => {
  const opening = { opens: 'PL.10', orOnSupports: [], under18CoachTick: false, words: '' };
  const library = PROPOSE.library.map((ladder) =>
    ladder.id === 'PL'
      ? { ...ladder, openings: [{ ...opening, needsAll: named.map((key) => [key]) }] }
      : ladder,
  );
  const skillId = library.find(({ id }) => id === 'PL')?.skillId ?? '';
  const tests = proposeTests([{ skillId, aimRungId: 'PL.10' }], { ...PROPOSE, library });
  expect(tests.filter(({ ladderId }) => ladderId === 'PL').map(({ rung }) => rung.id)).toEqual(asked);
});

test('what needs kit that is not there stays out and says why', () => {
  const pull = { skillId: 'Chest-to-bar pull-up', aimRungId: 'CB.5' };
  const without = proposeTests([pull], PROPOSE);
  expect(without.every(({ out }) => out?.startsWith('Needs'))).toBe(true);
  const withBar = proposeTests([pull], { ...PROPOSE, kit: ['bar', 'box'] });
  expect(withBar.map(({ out }) => out)).toEqual(withBar.map(() => null));
});

test('what a limit rules out stays out and says why', () => {
  const limits = [
    {
      tissue: 'wrist-back' as const,
      region: null,
      side: null,
      rule: 'none' as const,
      percent: null,
      from: '2026-11-01',
      until: null,
      who: 'Dr',
    },
  ];
  const tests = proposeTests([handstand], { ...PROPOSE, limits });
  const out = (ladderId: string) => tests.filter((one) => one.ladderId === ladderId).map((one) => one.out);
  expect(out('H2')).toEqual(['Ruled out by a limit.', 'Ruled out by a limit.']);
  expect(out('X1')).toEqual([null]);
});

test('bars at hand make up for the wrist: its range is not asked', () => {
  const tests = proposeTests([handstand], { ...PROPOSE, kit: ['parallel-bars'] });
  expect(tests.some(({ ladderId }) => ladderId === 'X2')).toBe(false);
});

test('no aim, no tests', () => {
  expect(keys()).toEqual([]);
  expect(keys({ skillId: 'Handstand', aimRungId: 'PL.2' })).toEqual([]);
});
