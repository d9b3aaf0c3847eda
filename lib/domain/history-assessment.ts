import type { Side } from './vocabulary.ts';

/** What a coach saw and measured of the parts that a skill asks. Names, so that it can be read without the ladders. */
export type HistoryAssessment = {
  id: string;
  date: string;
  skill: string;
  /** The rung the client wants to be able to do; null: it is gone. */
  aim: string | null;
  by: string | null;
  /** Kit at hand beside a floor and a wall. */
  kit: string[];
  parts: HistoryAssessedPart[];
};
export type HistoryAssessedPart = {
  part: string | null;
  ladder: string | null;
  /** The rung that is asked of the part. */
  asked: string | null;
  sides: HistoryAssessedSide[];
};
export type HistoryAssessedSide = {
  side: Side;
  /** What one slow lowering or attempt on film shows. */
  film: 'not-seen' | 'steady' | 'hurried' | 'drops';
  /** The rung the result was on; null: none was measured. */
  rung: string | null;
  /** Of `value`: s, reps, made, degrees or cm, by the measure of the rung. */
  unit: string | null;
  /** Sets, or tries where good ones are counted. */
  sets: number | null;
  value: number | null;
  clean: boolean | null;
  /** Worst joint or tendon pain in the part, 0-10. */
  pain: number | null;
};
