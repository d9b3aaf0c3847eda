/**
 * One drill that could be chosen, in whole numbers only. Numbers of things to cover and of mobility groups are
 * indexes of the program.
 */
export type CoverCandidate = {
  /** Unique; also the fixed order that decides between answers that are alike in everything else. */
  key: string;
  covers: readonly number[];
  /** Counts against the most strength drills. */
  strength: boolean;
  /** Mobility groups it is itself. */
  serves: readonly number[];
  /** Mobility groups that have to come with it. */
  needs: readonly number[];
  /** Load on sore or already loaded tissues; whole, 0 or more. */
  strain: number;
  /** Change from the current plan; whole, 0 or more. */
  change: number;
};

/**
 * Cover as many of the things 0 to `elements` - 1 as can be, with as few candidates as can be, then with the least
 * strain, then with the least change. Hard: at most `mostStrength` strength candidates, and every mobility group that
 * a chosen candidate needs is served by a chosen one.
 */
export type CoverProgram = {
  elements: number;
  mostStrength: number;
  candidates: readonly CoverCandidate[];
};

export type CoverAnswer = {
  /** Keys of the chosen candidates, in their order. */
  chosen: string[];
  /** What no chosen candidate covers. */
  uncovered: number[];
  strain: number;
  change: number;
};

/** The four aims of an answer, the most weighty first: compare from left to right, less is better. */
export type CoverScore = readonly [uncovered: number, drills: number, strain: number, change: number];

export function scoreOfAnswer(answer: CoverAnswer): CoverScore {
  return [answer.uncovered.length, answer.chosen.length, answer.strain, answer.change];
}

/** Below 0: `a` is better than `b`; 0: as good. */
export function compareScores(a: CoverScore, b: CoverScore): number {
  for (let index = 0; index < a.length; index += 1) {
    const difference = (a[index] ?? 0) - (b[index] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}
