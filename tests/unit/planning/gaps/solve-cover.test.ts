import { describe, expect, it } from 'vitest';
import {
  type CoverCandidate,
  type CoverProgram,
  compareScores,
  scoreOfAnswer,
} from '#lib/planning/gaps/cover-program.ts';
import { solveCover } from '#lib/planning/gaps/solve-cover.ts';
import { seededDraws } from '#lib/stats/seeded-draws.ts';
import { bestOfAll, chosenOf, randomProgram, scoreOfSet } from '#tests/fixtures/cover-programs.ts';

const SMALL = { elements: 7, candidates: 11, groups: 3, mostStrength: 5 };
const MIDDLE = { elements: 14, candidates: 40, groups: 4, mostStrength: 8 };
const seeds = (count: number, name: string) => Array.from({ length: count }, (_, at) => `${name} ${at}`);

const drill = (key: string, over: Partial<CoverCandidate>): CoverCandidate => ({
  key,
  covers: [],
  strength: true,
  serves: [],
  needs: [],
  strain: 0,
  change: 0,
  ...over,
});
const solve = (candidates: CoverCandidate[], over: Partial<CoverProgram> = {}) =>
  solveCover({ elements: 2, mostStrength: 4, candidates, ...over });

function shuffled<T>(items: readonly T[], seed: string): T[] {
  const { uniform } = seededDraws(seed);
  return items
    .map((item) => ({ item, at: uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

describe('against every subset', () => {
  it('500 random programs with all rules on: the same drills', () => {
    const seen = { left: 0, mobility: 0, tied: 0, full: 0 };
    for (const seed of seeds(500, 'small')) {
      const program = randomProgram(seed, SMALL);
      const answer = solveCover(program);
      const best = bestOfAll(program);
      expect({ seed, score: scoreOfAnswer(answer), chosen: answer.chosen }).toEqual({ seed, ...best });
      const chosen = chosenOf(program, answer);
      seen.left += Math.min(1, answer.uncovered.length);
      seen.mobility += chosen.some((one) => one.needs.length > 0) ? 1 : 0;
      seen.full += chosen.filter((one) => one.strength).length === program.mostStrength ? 1 : 0;
      seen.tied += chosen.length > 1 ? 1 : 0;
    }
    // The cases are worth something only when the rules bite in many of them.
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(50);
  });
});

describe('whatever the program', () => {
  it('the answer keeps every rule and tells its own figures truly', () => {
    for (const seed of seeds(120, 'middle')) {
      const program = randomProgram(seed, MIDDLE);
      const answer = solveCover(program);
      expect(scoreOfSet(program, chosenOf(program, answer))).toEqual(scoreOfAnswer(answer));
      const covered = new Set(chosenOf(program, answer).flatMap((one) => one.covers));
      expect(answer.uncovered.some((element) => covered.has(element))).toBe(false);
    }
  });
  it('the order of the drills and of what they cover changes nothing', () => {
    for (const seed of seeds(120, 'order')) {
      const program = randomProgram(seed, MIDDLE);
      const other = shuffled(program.candidates, seed).map((one) => ({
        ...one,
        covers: [...one.covers].reverse(),
        needs: [...one.needs].reverse(),
        serves: [...one.serves].reverse(),
      }));
      expect(solveCover({ ...program, candidates: other })).toEqual(solveCover(program));
    }
  });
  it('the names of the things to cover change nothing', () => {
    for (const seed of seeds(60, 'names')) {
      const program = randomProgram(seed, MIDDLE);
      const turned = (element: number) => program.elements - 1 - element;
      const other = program.candidates.map((one) => ({ ...one, covers: one.covers.map(turned) }));
      const [here, there] = [solveCover(program), solveCover({ ...program, candidates: other })];
      expect(there.chosen).toEqual(here.chosen);
      expect([...there.uncovered].map(turned).sort()).toEqual([...here.uncovered].sort());
    }
  });
  it('one more drill to choose from never makes it worse', () => {
    let better = 0;
    for (const seed of seeds(200, 'more')) {
      const program = randomProgram(seed, MIDDLE);
      const [one, ...fewer] = shuffled(program.candidates, `${seed} less`);
      if (!one) continue;
      const less = scoreOfAnswer(solveCover({ ...program, candidates: fewer }));
      const difference = compareScores(scoreOfAnswer(solveCover(program)), less);
      expect(difference).toBeLessThanOrEqual(0);
      if (difference < 0) better += 1;
    }
    expect(better).toBeGreaterThan(5);
  });
  it('more strength drills allowed never makes it worse', () => {
    for (const seed of seeds(100, 'room')) {
      const program = randomProgram(seed, MIDDLE);
      const wider = { ...program, mostStrength: program.mostStrength + 1 };
      const difference = compareScores(scoreOfAnswer(solveCover(wider)), scoreOfAnswer(solveCover(program)));
      expect(difference).toBeLessThanOrEqual(0);
    }
  });
});

describe('aim by aim', () => {
  it('a drill that serves two parts beats two drills, however much it loads', () => {
    const answer = solve([
      drill('a', { covers: [0] }),
      drill('b', { covers: [1] }),
      drill('c', { covers: [0, 1], strain: 900, change: 2 }),
    ]);
    expect(answer.chosen).toEqual(['c']);
  });
  it('covering more beats fewer drills', () => {
    expect(solve([drill('a', { covers: [0] }), drill('b', { covers: [1] })]).chosen).toEqual(['a', 'b']);
  });
  it('then less strain, then less change, then the order of the keys', () => {
    const both = { covers: [0, 1] };
    expect(
      solve([drill('a', { ...both, strain: 2 }), drill('b', { ...both, strain: 1, change: 2 })]).chosen,
    ).toEqual(['b']);
    expect(solve([drill('a', { ...both, change: 1 }), drill('b', both)]).chosen).toEqual(['b']);
    expect(solve([drill('b', both), drill('a', both)]).chosen).toEqual(['a']);
  });
  it('leaves what the strength drills allowed cannot reach, and says which', () => {
    const answer = solve([drill('a', { covers: [0] }), drill('b', { covers: [1], strain: 5 })], {
      mostStrength: 1,
    });
    expect(answer).toEqual({ chosen: ['a'], uncovered: [1], strain: 0, change: 0 });
  });
  it('brings the mobility that belongs to a drill, and goes without the drill where there is none', () => {
    const lift = drill('lift', { covers: [0, 1], needs: [0] });
    const wrists = drill('wrists', { strength: false, serves: [0] });
    expect(solve([lift, wrists]).chosen).toEqual(['lift', 'wrists']);
    expect(solve([lift]).uncovered).toEqual([0, 1]);
  });
  it('with nothing to cover or nothing to choose from, chooses nothing', () => {
    expect(solve([drill('a', { covers: [] })], { elements: 0 }).chosen).toEqual([]);
    expect(solve([]).uncovered).toEqual([0, 1]);
  });
});
