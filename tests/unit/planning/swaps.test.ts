import { describe, expect, it } from 'vitest';
import { weightsOnSupport } from '#lib/checks/supports.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import { headUpSwaps, type SwapRung, swapsOf } from '#lib/planning/swaps.ts';

const LIBRARY: SwapRung[] = STARTER_LIBRARY.ladders.flatMap((ladder) =>
  ladder.rungs.map((rung, index) => ({
    ...rung,
    id: rung.key,
    ladderId: ladder.key,
    part: ladder.part,
    skill: ladder.skill,
    position: index + 1,
    family: rung.family ?? ladder.family,
  })),
);
function rung(over: Partial<SwapRung> & { id: string }): SwapRung {
  return {
    ladderId: 'pull',
    part: 'Pulling',
    skill: 'Pull-up',
    position: 1,
    name: over.id,
    family: 'bent-arm-pull',
    measure: 'reps',
    weights: { 'elbow-bending': 0.8 },
    equipment: [],
    ...over,
  };
}
const instead = (rungs: SwapRung[], of: string) =>
  swapsOf(rungs)
    .filter((swap) => swap.rungId === of)
    .map((swap) => (swap.support ? `${swap.insteadId} on ${swap.support}` : swap.insteadId));

describe('what may be done instead', () => {
  it('is supports first, then easier rungs from the nearest, then another ladder of the part', () => {
    const rungs = [
      rung({ id: 'light', weights: { 'wrist-back': 0.2 } }),
      rung({ id: 'lighter', position: 2, weights: { 'wrist-back': 0.3 } }),
      rung({ id: 'same', position: 3, weights: { 'wrist-back': 0.8 } }),
      rung({ id: 'hurts', position: 4, weights: { 'wrist-back': 0.8 }, equipment: ['hard-floor'] }),
      rung({ id: 'other', ladderId: 'row', weights: { 'wrist-back': 0.1 } }),
    ];
    expect(instead(rungs, 'hurts')).toEqual([
      'hurts on parallel-bars',
      'hurts on fists',
      'lighter',
      'light',
      'other',
    ]);
  });

  it('is never harder, of another part, a range for a hold, or over half the weight', () => {
    const rungs = [
      rung({ id: 'hurts', position: 2 }),
      rung({ id: 'harder', position: 3, weights: {} }),
      rung({ id: 'elsewhere', part: 'Pushing', weights: {} }),
      rung({ id: 'range', measure: 'range-up', weights: {} }),
      rung({ id: 'just over', weights: { 'elbow-bending': 0.41 } }),
    ];
    expect(instead(rungs, 'hurts')).toEqual([]);
  });

  it('is looked for on tissues loaded with 0.3 or more only', () => {
    const rungs = [rung({ id: 'a', position: 2, weights: { neck: 0.29 } }), rung({ id: 'b', weights: {} })];
    expect(swapsOf(rungs)).toEqual([]);
  });

  it('spares the tissue by half or more in every swap of the starter library', () => {
    const byId = new Map(LIBRARY.map((one) => [one.id, one]));
    const swaps = swapsOf(LIBRARY);
    expect(swaps.length).toBeGreaterThan(400);
    for (const swap of swaps) {
      const from = byId.get(swap.rungId)?.weights ?? {};
      const to = weightsOnSupport(byId.get(swap.insteadId)?.weights ?? {}, swap.support);
      expect(to[swap.tissue] ?? 0).toBeLessThanOrEqual((from[swap.tissue] ?? 0) / 2);
    }
  });

  it('puts a wall handstand on bars or fists for a sore wrist', () => {
    const found = swapsOf(LIBRARY).filter((one) => one.rungId === 'H4.3' && one.tissue === 'wrist-back');
    expect(found.map((one) => one.support)).toEqual(['parallel-bars', 'fists']);
  });
});

describe('while upside-down work is held', () => {
  const headUp = (id: string) => headUpSwaps(LIBRARY.find((one) => one.id === id) ?? rung({ id }), LIBRARY);

  it('is the nearest rungs of the same part with the head up', () => {
    expect(headUp('U1.8')).toEqual(['U1.2', 'U1.1']);
    expect(headUp('H2.6')).toEqual(['H2.1']);
    expect(headUp('BK.3')).toEqual(['BK.1']);
    expect(headUp('LM.6')[0]).toBe('LM.5');
  });

  it('is nothing where every rung of the part is upside down', () => {
    expect(headUp('H3.4')).toEqual([]);
    expect(headUp('OA.11')).toEqual([]);
  });

  it('is never an upside-down rung, for any rung of the library', () => {
    const down = new Set(LIBRARY.filter((one) => one.upsideDown).map(({ id }) => id));
    for (const id of down)
      for (const swap of headUp(id)) expect(down.has(swap), `${id}: ${swap}`).toBe(false);
  });
});
