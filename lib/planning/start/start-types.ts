import type { PainRegion, Side, Support } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';

/** One thing a client is asked to do once: the drill of a rung. Rungs of the same drill share it. */
export type StartTest = {
  ladderId: string;
  /** The hardest rung in use of this drill. */
  rungId: string;
  /** Sets to do; tries where good ones are counted; 1 for a range. */
  sets: number;
  /** The coach wants to see it. */
  film: boolean;
};

export const START_OUTCOMES = ['done', 'cannot', 'hurts'] as const;
export type StartOutcome = (typeof START_OUTCOMES)[number];

/** What a client says of one test on one side. */
export type StartAnswer = {
  ladderId: string;
  rungId: string;
  side: Side;
  outcome: StartOutcome;
  /** Of each set, in the rung's measure; one value of a range, or how many tries were good. Empty unless done. */
  values: readonly number[];
  /** Tries, where good ones are counted. */
  tried: number | null;
  /** Every set was as "clean" is written; null: not asked or not said. */
  clean: boolean | null;
  /** Joint or tendon pain 0-10 and where, when it hurt. */
  pain: number | null;
  region: PainRegion | null;
};

/** What decides beside the answers. */
export type StartFacts = {
  /** Ladders in use, in the order of the team's library. */
  library: readonly GapLadder[];
  /** Kit at hand beside a floor and a wall. */
  kit: readonly string[];
  under18: boolean;
  /** The coach allows what is open to under-18s only so. */
  under18Allowed: boolean;
  /** Where the client stands on ladders that are trained now; empty for somebody who starts, or starts again as new. */
  standing: readonly { ladderId: string; side: Side; rungId: string }[];
};

/** Where a client is proposed to stand on one ladder and side; `rung` null: on none, for the reason said. */
export type ProposedPlace = {
  ladder: GapLadder;
  side: Side;
  rung: GapRung | null;
  /** The support on which alone it is open. */
  on: Support | null;
  /** One plain sentence. */
  why: string;
  /** What makes it unsure: results that are missing or contradict each other. */
  doubts: string[];
};
