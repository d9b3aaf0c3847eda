import type { Family, Fault } from '#lib/domain/vocabulary.ts';
import type { DrillState, LadderState, OpeningState, RungState, SwapState } from './ladder-state.ts';

export type RungFields = Pick<RungState, 'name' | 'pass' | 'usualWeeks' | 'needsFilm' | 'note'>;
export type DrillFields = Omit<DrillState, 'id' | 'name'>;
export type NewStep = {
  name: string;
  pass: RungState['pass'];
  /** Weight of the tissue that carries the moment, 0-1; null: the step is the same drill. */
  weight: number | null;
};

/** What a coach does to one ladder, in one save. */
export type LadderEdit =
  | { act: 'about'; name: string; partId: string; family: Family; clean: string; faults: Fault[] }
  | {
      act: 'rung';
      rungId: string;
      rung: RungFields;
      drill: DrillFields;
      /** Rungs that differ in the pass mark only share a drill: change it for all of them or for this one. */
      drillFor: 'all' | 'this';
      swaps: SwapState[];
    }
  /** `above` null: as the easiest. */
  | { act: 'add-rung'; above: string | null; rung: RungFields; drill: DrillFields }
  | { act: 'openings'; openings: OpeningState[] }
  /** Rungs in use, easiest first. */
  | { act: 'order'; rungIds: string[] }
  /** `steps` easiest first; the rung itself stays as the last and hardest. */
  | { act: 'split'; rungId: string; steps: NewStep[]; tissue: SwapState['tissue'] | null }
  | { act: 'retire-rung' | 'put-back-rung'; rungId: string }
  | { act: 'retire-ladder' | 'put-back-ladder' };

/** The ladder after the edit, or what is wrong with it, by field. Nothing is done halfway. */
export type Edited = { state: LadderState } | { wrong: Record<string, string> };
