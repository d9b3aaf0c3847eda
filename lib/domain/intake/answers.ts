import type { DangerSign, Ground, PainRegion, PainSide } from '../vocabulary.ts';
import type { HealthQuestion } from './health-questions.ts';

/** What a client told at the start, as it is kept once it is sent. */
export type IntakeAnswers = {
  adult: boolean;
  birthYear: number;
  /** Null: not told. */
  bodyMassKg: number | null;
  /** Health questions answered with yes. */
  health: HealthQuestion[];
  healthWords: string;
  /** Danger signs there now. */
  dangerSigns: DangerSign[];
  /** Joint or tendon pain now; empty: nothing hurts. Value 0-10. */
  pain: { region: PainRegion; side: PainSide; value: number; sinceWeeks: number }[];
  /** A usual week: days, minutes a session, how hard 0-10. */
  week: { days: number; minutes: number; effort: number };
  /** Weeks without training up to now; 0: trained in the last three. */
  breakWeeks: number;
  otherSport: string;
  job: string;
  /** Kit at hand, named as drills do. */
  kit: string[];
  ground: Ground | null;
  /** Names of skills wanted. */
  skills: string[];
  goal: string;
  why: string;
};

/** The told usual week in arbitrary units: days x minutes x how hard. Null: a week without training tells nothing. */
export function toldWeekAu({ days, minutes, effort }: IntakeAnswers['week']): number | null {
  const load = days * minutes * effort;
  return load > 0 ? load : null;
}
