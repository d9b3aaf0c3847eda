import type { Limits } from '#lib/checks/thresholds.ts';
import type { HistoryLimit, HistoryPlacement, HistoryPlan } from '#lib/domain/history.ts';
import type { BodyState } from './body-state.ts';
import type { GapLadder } from './gap-types.ts';

/** What the gap finder knows of a client beside the assessment. */
export type GapContext = {
  /** Ladders in use, in the order of the team's library. */
  library: readonly GapLadder[];
  date: string;
  under18: boolean;
  bodyMassKg: number | null;
  limits: readonly HistoryLimit[];
  body: BodyState;
  /** The plan in force, if there is one. */
  plan: HistoryPlan | null;
  /** Where the client stands on ladders, for those the assessment does not ask about. */
  placements: readonly HistoryPlacement[];
  numbers: Limits;
};
