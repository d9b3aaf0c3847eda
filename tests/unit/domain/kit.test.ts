import { describe, expect, it, test } from 'vitest';
import { KIT, STANDS_ON } from '#lib/domain/equipment.ts';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { kitMissing, kitNeeded } from '#lib/domain/kit.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';

test.each([
  [['hard-floor'], []],
  [['hard-floor', 'wall', 'mat'], []],
  [['parallel-bars', 'hard-floor'], []],
  [['parallel-bars', 'wall'], ['parallel bars']],
  [['bar', 'rings'], ['bar or rings']],
  [
    ['bar', 'box'],
    ['bar', 'box'],
  ],
  [[], []],
])('%j needs %j', (equipment, needed) => {
  expect(kitNeeded(equipment)).toEqual(needed);
});

test.each([
  [['bar', 'rings'], ['rings'], undefined],
  [['bar', 'rings'], ['box'], 'bar or rings'],
  [['bar', 'box'], ['bar'], 'box'],
  [['parallel-bars', 'hard-floor'], [], undefined],
  [['parallel-bars', 'mat'], ['bar'], 'parallel bars'],
])('%j with %j at hand misses %j', (equipment, atHand, missing) => {
  expect(kitMissing(equipment, atHand)).toBe(missing);
});

describe('the week without kit and the gap finder mean the same by kit', () => {
  const all = STARTER_LIBRARY.ladders.flatMap((ladder) => ladder.rungs.map((rung) => rung.equipment));
  const alone = [...STANDS_ON, ...KIT].map((one) => [one]);

  it('what can be done with nothing at hand needs no kit, and the other way round', () => {
    for (const equipment of [...all, ...alone])
      expect(kitMissing(equipment, []), equipment.join()).toBe(kitNeeded(equipment)[0]);
  });

  it('all kit that a drill of the library can need is asked about', () => {
    for (const equipment of [...all, ...alone]) expect(kitMissing(equipment, GAP_KIT)).toBeUndefined();
  });

  it('nothing is asked about that no drill needs, but the wedge, a support', () => {
    const needed = [...STANDS_ON, ...KIT].filter((one) => kitNeeded([one]).length > 0);
    expect([...GAP_KIT].sort()).toEqual([...needed, 'wedge'].sort());
  });
});
