import { describe, expect, it } from 'vitest';
import { dayFacts } from '#lib/checks/day-facts.ts';
import { setSeconds, setTissueLoad } from '#lib/checks/exposure.ts';
import { aCheckIn, aPain, aRestDay, aRung, aSet } from '#tests/fixtures/history-builders.ts';

const HOLD = aRung({
  id: 'hold',
  measure: 'hold',
  secondsPerRep: null,
  weights: { 'wrist-back': 0.7, 'wrist-forward': 0.4, hamstrings: 0.2 },
});
const hold = (over: Parameters<typeof aSet>[0] = {}) => aSet({ rungId: 'hold', value: 20, ...over });

describe('exposure of a set', () => {
  it('shares two hands half and half, and counts legs in full', () => {
    // 20 s x 1/2 x 0.7 = 7 BW s a wrist; hamstrings 20 s x 0.2 = 4.
    const load = setTissueLoad(hold(), HOLD);
    expect(load['wrist-back:left']).toBeCloseTo(7, 10);
    expect(load['wrist-back:right']).toBeCloseTo(7, 10);
    expect(load['hamstrings:left']).toBeCloseTo(4, 10);
  });
  it('gives the working and the helping hand their own shares', () => {
    const rung = aRung({ ...HOLD, eachSide: true, share: 0.86, helpingShare: 0.14 });
    const load = setTissueLoad(hold({ side: 'left' }), rung);
    expect(load['wrist-back:left']).toBeCloseTo(20 * 0.86 * 0.7, 10);
    expect(load['wrist-back:right']).toBeCloseTo(20 * 0.14 * 0.7, 10);
  });
  it('mirrors with the side', () => {
    const rung = aRung({ ...HOLD, eachSide: true, share: 0.86, helpingShare: 0.14 });
    const left = setTissueLoad(hold({ side: 'left' }), rung);
    const right = setTissueLoad(hold({ side: 'right' }), rung);
    expect(left['wrist-back:left']).toBe(right['wrist-back:right']);
    expect(left['wrist-back:right']).toBe(right['wrist-back:left']);
  });
  it('counts both hands where the legs alternate, and only the leg that works', () => {
    const rung = aRung({ ...HOLD, eachSide: true, eachIsLeg: true });
    const load = setTissueLoad(hold({ side: 'left' }), rung);
    expect(load['wrist-back:right']).toBeCloseTo(7, 10);
    expect(load['hamstrings:left']).toBeCloseTo(4, 10);
    expect(load['hamstrings:right'] ?? 0).toBe(0);
  });
  // The table of supports: common practice, no source.
  it.each([
    ['hard-floor', 7, 4],
    ['wedge', 5.25, 4],
    ['parallel-bars', 1.75, 5.5],
    ['fists', 1.05, 5],
    ['rings', 1.4, 6],
    ['soft-ground', 8.05, 4],
    ['bar-straps', 7, 2.4],
  ] as const)('on %s the wrist bent back gets %f and bent forward %f BW s', (support, back, forward) => {
    const load = setTissueLoad(hold({ support }), HOLD);
    expect(load['wrist-back:left']).toBeCloseTo(back, 10);
    expect(load['wrist-forward:left']).toBeCloseTo(forward, 10);
  });
  it('adds weight as a part of body mass, and leaves it out when the mass is not known', () => {
    const set = hold({ addedKg: 15 });
    expect(setTissueLoad(set, HOLD, { bodyMassKg: 60 })['wrist-back:left']).toBeCloseTo(7 * 1.25, 10);
    expect(setTissueLoad(set, HOLD)['wrist-back:left']).toBeCloseTo(7, 10);
  });
  it('takes seconds of holds and lowerings, tempo of reps, tries made or not, none of ranges', () => {
    expect(setSeconds(hold(), HOLD)).toBe(20);
    expect(setSeconds(aSet({ value: 5 }), aRung({ secondsPerRep: 4 }))).toBe(20);
    expect(setSeconds(aSet({ value: 8 }), aRung({ measure: 'lowering', secondsPerRep: null }))).toBe(8);
    expect(
      setSeconds(aSet({ value: 3, tried: 10 }), aRung({ measure: 'made-tried', secondsPerRep: 3 })),
    ).toBe(30);
    expect(setSeconds(aSet({ value: 90 }), aRung({ measure: 'range-up', secondsPerRep: null }))).toBe(0);
  });
  it('loads nothing that was not done, and no hand that carries nothing', () => {
    expect(setTissueLoad(hold({ value: null, how: 'not-done' }), HOLD)).toEqual({});
    expect(setTissueLoad(hold(), aRung({ ...HOLD, share: null }))['wrist-back:left'] ?? 0).toBe(0);
  });
});

describe('the facts of a day', () => {
  const rungs = new Map([[aRung().id, aRung()]]);
  it('adds up sessions, and knows no load when effort or minutes are missing', () => {
    expect(dayFacts([aCheckIn(0), aCheckIn(0, { effort: 7, minutes: 40 })], rungs).sessionLoad).toBe(580);
    expect(dayFacts([aCheckIn(0), aCheckIn(0, { effort: null })], rungs).sessionLoad).toBeUndefined();
    expect(dayFacts([aRestDay(0)], rungs).sessionLoad).toBe(0);
    expect(dayFacts([], rungs).sessionLoad).toBeUndefined();
  });
  it('takes the worst joint score only, and "nothing hurts" as 0', () => {
    const pain = [aPain(2), aPain(4), aPain(8, { kind: 'muscle' })];
    expect(dayFacts([aCheckIn(0, { pain })], rungs).worstPain).toBe(4);
    expect(dayFacts([aCheckIn(0)], rungs).worstPain).toBe(0);
    expect(dayFacts([], rungs).worstPain).toBeNull();
  });
  it('counts soft ground as soft support', () => {
    const press = aRung({ weights: { 'wrist-back': 0.5 } });
    const on = (ground: 'grass' | 'mat') =>
      dayFacts([aCheckIn(0, { ground })], new Map([[press.id, press]])).tissueLoad['wrist-back:left'] ?? 0;
    expect(on('grass') / on('mat')).toBeCloseTo(1.15, 10);
  });
});
