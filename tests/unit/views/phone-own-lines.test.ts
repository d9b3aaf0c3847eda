import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { windowEdges } from '#lib/views/phone-edges.ts';
import { sidesOfRungs } from '#lib/views/phone-sides.ts';
import { aCheckIn, aHistory, aRung, day, evening, sets } from '#tests/fixtures/history-builders.ts';

const HEEL = aRung({
  id: 'heel',
  ladderId: 'H3',
  ladder: 'Heel pull',
  name: 'Heel pull, short holds',
  part: 'Over-balance',
  measure: 'hold',
});
const TOE = aRung({
  id: 'toe',
  ladderId: 'H4',
  ladder: 'Toe pull',
  name: 'Toe pull, short holds',
  part: 'Under-balance',
  measure: 'hold',
});
const edges = (checkIns: HistoryCheckIn[], days: number) =>
  windowEdges(buildView(aHistory({ rungs: [HEEL, TOE], checkIns }), evening(days)), DEFAULT_LIMITS);
const both = (days: number, heel: number[], toe: number[]) =>
  aCheckIn(days, { sets: [...sets(heel, { rungId: 'heel' }), ...sets(toe, { rungId: 'toe' })] });

describe('the balance window of a client', () => {
  it('is the middle of the best clean hold of each day, each edge for itself', () => {
    const days = [both(0, [14, 12], [7]), both(3, [16], [9, 8]), both(6, [18], [])];
    expect(edges(days, 6)).toEqual([
      { name: 'short holds', withinDays: 42, heel: { seconds: 16, days: 3 }, toe: { seconds: 8, days: 2 } },
    ]);
  });
  it('leaves out what is older than six weeks before the last day, and sets that were not clean', () => {
    const old = both(0, [40], [40]);
    const broken = aCheckIn(50, {
      sets: [...sets([30], { rungId: 'heel', clean: false }), ...sets([10], { rungId: 'heel' })],
    });
    expect(edges([old, broken], 50)).toEqual([
      { name: 'short holds', withinDays: 42, heel: { seconds: 10, days: 1 }, toe: null },
    ]);
  });
  it('is nothing where neither edge was trained', () => {
    expect(edges([], 6)).toEqual([]);
  });
});

const TWO_FINGERS = aRung({
  name: 'One-arm hold, two fingers',
  measure: 'hold',
  eachSide: true,
  pass: { sets: 3, target: 30, days: 3, tries: null },
});
const pair = (days: number, left: number, right: number) =>
  aCheckIn(days, {
    sets: [...sets([left], { side: 'left', planned: 30 }), ...sets([right], { side: 'right', planned: 30 })],
  });
const sides = (checkIns: HistoryCheckIn[], rung = TWO_FINGERS) => {
  const placements = [{ ladderId: rung.ladderId, side: 'both' as const, rungId: rung.id, from: day(0) }];
  const history = aHistory({ rungs: [rung], checkIns, placements });
  return sidesOfRungs(buildView(history, evening(30)), DEFAULT_LIMITS);
};

describe('left and right of a client', () => {
  it('is the middle of each side over the last six days with both', () => {
    const days = [pair(0, 1, 1), ...[14, 15, 13, 15, 16, 15].map((left, at) => pair(3 + at * 3, left, 20))];
    expect(sides(days)).toEqual([
      {
        rungId: TWO_FINGERS.id,
        rung: 'One-arm hold, two fingers',
        left: 15,
        right: 20,
        unit: 's',
        days: 6,
      },
    ]);
  });
  it('leaves out rungs done with both sides together, and those without a day with both', () => {
    expect(sides([pair(0, 14, 15)], aRung({ measure: 'hold', eachSide: false }))).toEqual([]);
    expect(sides([aCheckIn(0, { sets: sets([14], { side: 'left', planned: 30 }) })])).toEqual([]);
  });
});
