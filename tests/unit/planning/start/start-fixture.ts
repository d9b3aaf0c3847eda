import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { GapLadder, GapRung } from '#lib/planning/gaps/gap-types.ts';
import { testOf } from '#lib/planning/start/propose-tests.ts';
import type { StartAnswer, StartFacts, StartTest } from '#lib/planning/start/start-types.ts';
import { GAP_LIBRARY } from '#tests/fixtures/gap-library.ts';

export const FACTS: StartFacts = {
  library: GAP_LIBRARY,
  kit: ['block', 'box'],
  under18: false,
  under18Allowed: false,
  standing: [],
};
export const PROPOSE = {
  library: GAP_LIBRARY,
  kit: ['block', 'box'],
  date: '2026-11-25',
  limits: [],
  numbers: DEFAULT_LIMITS,
};

/** A ladder and rung of the starter library by a key such as `H3.4`. */
export function at(key: string): { ladder: GapLadder; rung: GapRung } {
  const ladder = GAP_LIBRARY.find(({ rungs }) => rungs.some((rung) => rung.id === key));
  const rung = ladder?.rungs.find(({ id }) => id === key);
  if (!ladder || !rung) throw new Error(`no rung ${key}`);
  return { ladder, rung };
}

export function asked(...keys: string[]): StartTest[] {
  return keys.map((key) => testOf(at(key).ladder, at(key).rung));
}

/** An answer to the test of a rung's drill: done, clean, without pain. */
export function answer(key: string, values: number[], over: Partial<StartAnswer> = {}): StartAnswer {
  const { ladder, rung } = at(key);
  return {
    ladderId: ladder.id,
    rungId: testOf(ladder, rung).rungId,
    side: 'both',
    outcome: 'done',
    values,
    tried: rung.measure === 'made-tried' ? (rung.pass.tries ?? rung.pass.target) : null,
    clean: true,
    pain: null,
    region: null,
    ...over,
  };
}

export const cannot = (key: string, over: Partial<StartAnswer> = {}) =>
  answer(key, [], { outcome: 'cannot', clean: null, ...over });
export const hurts = (key: string, pain: number, over: Partial<StartAnswer> = {}) =>
  answer(key, [], { outcome: 'hurts', clean: null, pain, region: 'wrist-back', ...over });

/** Every range and exit that the openings of the handstand ask for. */
export const READY: StartAnswer[] = [
  answer('X1.2', [170], { side: 'left' }),
  answer('X1.2', [165], { side: 'right' }),
  answer('X2.3', [95], { side: 'left' }),
  answer('X2.3', [90], { side: 'right' }),
  answer('H1.2', [3, 3, 3], { side: 'left' }),
  answer('H1.2', [3, 3, 3], { side: 'right' }),
  answer('H2.3', [45, 45, 45]),
];
