import { expect, it } from 'vitest';
import { scoreOfAnswer } from '#lib/planning/gaps/cover-program.ts';
import { solveCover } from '#lib/planning/gaps/solve-cover.ts';
import { randomProgram } from '#tests/fixtures/cover-programs.ts';
import { highs, scoreByHighs } from '#tests/fixtures/solve-by-highs.ts';

// Programs as large as a client's and larger, too many subsets to go through: HiGHS 1.15.3 (Huangfu & Hall 2018,
// Math Prog Comp 10:119-142; MIT) answers each aim in turn.
const AS_A_CLIENT = { elements: 16, candidates: 50, groups: 4, mostStrength: 8 };

it('HiGHS and our own branch and bound agree on all four aims of 60 programs', {
  timeout: 110_000,
}, async () => {
  const solver = await highs();
  for (let at = 0; at < 60; at += 1) {
    const program = randomProgram(`witness ${at}`, AS_A_CLIENT);
    expect({ at, score: scoreOfAnswer(solveCover(program)) }).toEqual({
      at,
      score: scoreByHighs(solver, program),
    });
  }
});
