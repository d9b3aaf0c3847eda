import type { Side, Support } from './vocabulary.ts';

/** A line of a plan as it is kept. */
export type PlanLine = {
  session: string;
  rungId: string;
  side: Side;
  sets: number;
  /** In the rung's measure; null when practised by minutes. */
  target: number | null;
  minutes: number | null;
  timesPerWeek: number;
  support: Support | null;
  stopRule: string;
  notTwoDaysRunning: boolean;
  /** The rung of the line of this session and side that it is done together with. */
  pairedWith: string | null;
  noKitRungId: string | null;
};
