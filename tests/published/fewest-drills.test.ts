import { describe, expect, it } from 'vitest';
import { type CoverCandidate, scoreOfAnswer } from '#lib/planning/gaps/cover-program.ts';
import { solveCover } from '#lib/planning/gaps/solve-cover.ts';

const plain = (name: number, covers: readonly number[], cost = 0): CoverCandidate => ({
  key: String(name).padStart(4, '0'),
  covers,
  strength: false,
  serves: [],
  needs: [],
  strain: cost,
  change: 0,
});
/** A set cover with nothing else: which sets, and their cost as the second aim. */
function cover(elements: number, sets: readonly (readonly number[])[], costs: readonly number[] = []) {
  const answer = solveCover({
    elements,
    mostStrength: 0,
    candidates: sets.map((covers, index) => plain(index + 1, covers, costs[index])),
  });
  return { ...answer, sets: answer.chosen.map(Number) };
}
const upTo = (count: number) => Array.from({ length: count }, (_, index) => index);

describe('fire stations of Kilroy County (Winston, Operations Research, set-covering example; optimum recalled, and proven here over all pairs)', () => {
  // Driving minutes between six cities; a station covers a city within 15.
  const MINUTES = [
    [0, 10, 20, 30, 30, 20],
    [10, 0, 25, 35, 20, 10],
    [20, 25, 0, 15, 30, 20],
    [30, 35, 15, 0, 15, 25],
    [30, 20, 30, 15, 0, 14],
    [20, 10, 20, 25, 14, 0],
  ];
  const covers = MINUTES.map((row) => row.flatMap((minutes, city) => (minutes <= 15 ? [city] : [])));
  it('needs two stations, in cities 2 and 4', () => {
    expect(cover(6, covers).sets).toEqual([2, 4]);
    const pairs = upTo(6).flatMap((a) => upTo(a).map((b) => [b, a] as const));
    const all = pairs.filter(([a, b]) => new Set([...(covers[a] ?? []), ...(covers[b] ?? [])]).size === 6);
    expect(all).toEqual([[1, 3]]);
  });
});

describe('crews of Southwestern Airways (Hillier & Lieberman, Introduction to Operations Research, weighted; columns and optimum recalled, proven here over all triples)', () => {
  // Which of the twelve sequences of flights cover each of the eleven flights; cost in thousands of dollars.
  const FLIGHTS = [
    [1, 4, 7, 10],
    [2, 5, 8, 11],
    [3, 6, 9, 12],
    [4, 7, 9, 10, 12],
    [1, 6, 10, 11],
    [4, 5, 9],
    [7, 8, 10, 11, 12],
    [2, 4, 5, 9],
    [5, 8, 11],
    [3, 7, 8, 12],
    [6, 9, 10, 11, 12],
  ];
  const COSTS = [2, 3, 4, 6, 7, 5, 7, 8, 9, 9, 8, 9];
  const sequences = upTo(12).map((at) =>
    FLIGHTS.flatMap((who, flight) => (who.includes(at + 1) ? [flight] : [])),
  );
  it('needs three sequences, cheapest at 18; of the two such answers the one first in order', () => {
    const answer = cover(11, sequences, COSTS);
    expect(answer.strain).toBe(18);
    expect(answer.sets).toEqual([1, 5, 12]);
    const triples = upTo(12).flatMap((a) => upTo(a).flatMap((b) => upTo(b).map((c) => [c, b, a] as const)));
    const all = triples
      .filter((three) => new Set(three.flatMap((at) => sequences[at] ?? [])).size === 11)
      .map((three) => ({ three, cost: three.reduce((sum, at) => sum + (COSTS[at] ?? 0), 0) }));
    expect(Math.min(...all.map(({ cost }) => cost))).toBe(18);
    const best = all.filter(({ cost }) => cost === 18).map(({ three }) => three.map((at) => at + 1));
    expect(best.sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0))).toEqual([
      [1, 5, 12],
      [3, 4, 11],
    ]);
  });
});

describe('fewest queens that attack or stand on every square (OEIS A075458)', () => {
  it.each([
    [4, 2],
    [5, 3],
    [6, 3],
    [7, 4],
  ])('%i x %i board', (size, fewest) => {
    const squares = upTo(size * size).map((at) => ({ row: Math.floor(at / size), column: at % size }));
    const attacks = squares.map((queen) =>
      squares.flatMap(({ row, column }, at) => {
        const [down, across] = [Math.abs(row - queen.row), Math.abs(column - queen.column)];
        return down === 0 || across === 0 || down === across ? [at] : [];
      }),
    );
    expect(cover(size * size, attacks).sets).toHaveLength(fewest);
  });
});

describe('Steiner triple systems: fewest points that meet every triple (Fulkerson, Nemhauser & Trotter 1974)', () => {
  /** Triples of numbers whose digits in base 3 add up to 0 modulo 3, place by place. */
  function triples(digits: number): number[][] {
    const points = upTo(3 ** digits);
    const digit = (value: number, place: number) => Math.floor(value / 3 ** place) % 3;
    const third = (a: number, b: number) =>
      upTo(digits).reduce(
        (sum, place) => sum + ((6 - digit(a, place) - digit(b, place)) % 3) * 3 ** place,
        0,
      );
    return points.flatMap((a) =>
      points.flatMap((b) => (a < b && b < third(a, b) ? [[a, b, third(a, b)]] : [])),
    );
  }
  const meeting = (points: number, lines: readonly (readonly number[])[]) =>
    cover(
      lines.length,
      upTo(points).map((point) => lines.flatMap((line, at) => (line.includes(point) ? [at] : []))),
    ).sets.length;

  it('3 of 7 points (the Fano plane)', () => {
    const lines = upTo(7).map((at) => [at, (at + 1) % 7, (at + 3) % 7]);
    expect(meeting(7, lines)).toBe(3);
  });
  it('5 of 9 points, 12 triples', () => {
    expect(triples(2)).toHaveLength(12);
    expect(meeting(9, triples(2))).toBe(5);
  });
  it('18 of 27 points, 117 triples', () => {
    expect(triples(3)).toHaveLength(117);
    expect(meeting(27, triples(3))).toBe(18);
  });
});

it('is better than taking the largest set first: {1,2,3}, {4,5,6}, {1,2,4,5} need two (own)', () => {
  const answer = cover(6, [
    [0, 1, 2],
    [3, 4, 5],
    [0, 1, 3, 4],
  ]);
  expect(answer.sets).toEqual([1, 2]);
  expect(scoreOfAnswer(answer)).toEqual([0, 2, 0, 0]);
});
