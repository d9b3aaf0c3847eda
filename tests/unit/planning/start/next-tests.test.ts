import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { testSteps } from '#lib/planning/start/next-tests.ts';
import type { StartAnswer } from '#lib/planning/start/start-types.ts';
import { answer, asked, cannot, FACTS, hurts, READY } from './start-fixture.ts';

const states = (keys: string[], answers: StartAnswer[], limits: HistoryLimit[] = []) =>
  Object.fromEntries(
    testSteps({
      tests: asked(...keys),
      answers,
      facts: FACTS,
      limits,
      date: '2026-11-25',
      numbers: DEFAULT_LIMITS,
    }).map(({ test: { rungId }, side, state }) => [side === 'both' ? rungId : `${rungId} ${side}`, state]),
  );

test('one side after the other, the harder drill only after the easier one', () => {
  expect(states(['H2.1', 'H2.3', 'X1.2'], [])).toEqual({
    'H2.1': 'next',
    'H2.3': 'waits',
    'X1.4 left': 'next',
    'X1.4 right': 'next',
  });
});

test.each<[string, StartAnswer, string]>([
  ['done clean', answer('H2.1', [60, 60]), 'next'],
  ['done to three quarters', answer('H2.1', [45, 45]), 'next'],
  ['done to less', answer('H2.1', [44, 45]), 'stopped'],
  ['done, not clean', answer('H2.1', [60, 60], { clean: false }), 'stopped'],
  ['cannot', cannot('H2.1'), 'stopped'],
  ['hurts', hurts('H2.1', 3), 'stopped'],
])('after an easier one %s', (_, first, harder) => {
  expect(states(['H2.1', 'H2.3'], [first])).toEqual({ 'H2.1': 'answered', 'H2.3': harder });
});

test('what must stand before is not shown to stand: closed, with why', () => {
  const [step] = testSteps({
    tests: asked('H3.1'),
    answers: [],
    facts: FACTS,
    limits: [],
    date: '2026-11-25',
    numbers: DEFAULT_LIMITS,
  });
  expect(step).toMatchObject({ state: 'closed' });
  expect(step?.words).toMatch(/^Not open yet: .*[^.]\.$/);
  expect(states(['H3.1'], READY)).toEqual({ 'H3.1': 'next' });
});

test('a limit closes a test that is open, whenever it comes', () => {
  const limit: HistoryLimit = {
    tissue: 'wrist-back',
    region: null,
    side: null,
    rule: 'none',
    percent: null,
    from: '2026-11-25',
    until: null,
    who: 'Dr',
  };
  expect(states(['H2.1'], [], [limit])).toEqual({ 'H2.1': 'closed' });
  expect(states(['H2.1'], [], [{ ...limit, from: '2026-11-26' }])).toEqual({ 'H2.1': 'next' });
});

test('a rung that left the ladders is left out', () => {
  const tests = [{ ladderId: 'H2', rungId: 'gone', sets: 3, film: false }];
  expect(
    testSteps({ tests, answers: [], facts: FACTS, limits: [], date: '2026-11-25', numbers: DEFAULT_LIMITS }),
  ).toEqual([]);
});
