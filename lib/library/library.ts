import type { Family, Fault, Measure, Support, Tissue } from '#lib/domain/vocabulary.ts';
import data from './starter-library.json' with { type: 'json' };

export type LibraryRung = {
  /** Ladder and position, `H3.4`. */
  key: string;
  name: string;
  /** Where a rung is of another stress family than its ladder. */
  family?: Family;
  measure: Measure;
  /** `each`: pass mark of each side; `leg`: legs alternate, the arms count as both hands. */
  per: 'both' | 'each' | 'leg';
  /** `target` in seconds, reps, tries made, degrees (range-up) or cm (range-down). */
  pass: { sets: number; target: number; days: number; tries?: number };
  /** Seconds under load a rep or a try; absent where the value is seconds already. */
  secondsPerRep?: number;
  equipment: string[];
  /** The head comes below the heart, also on the way in or out. Common practice, no source. */
  upsideDown?: boolean;
  usualWeeks: number;
  /** Share of body weight on the hands, both together; one-arm: the working hand. Absent: none. */
  share?: number;
  helpingShare?: number;
  /** Key into `shareSources`. */
  shareSource?: string;
  weights: Partial<Record<Tissue, number>>;
  needsFilm?: boolean;
  note?: string;
};

export type LibraryOpening = {
  /** The rung that opens. */
  opens: string;
  /** All of these; inside one entry any of its rungs will do. */
  needsAll: string[][];
  /** Open at once on one of these supports. */
  orOnSupports?: Support[];
  /** Under 18 only when the coach ticked it. */
  under18CoachTick?: boolean;
  words: string;
};

export type LibraryLadder = {
  key: string;
  skill: string;
  part: string;
  name: string;
  family: Family;
  clean: string;
  faults: Fault[];
  camera: string;
  openings: LibraryOpening[];
  rungs: LibraryRung[];
};

export type LibrarySupport = {
  key: Support;
  name: string;
  wristBackFactor: number;
  wristForwardFactor?: number;
  /** Added to the weight of a tissue. */
  add?: Partial<Record<Tissue, number>>;
  resultsCount?: boolean;
};

export type Library = {
  about: string;
  shareSources: Record<string, string>;
  supports: LibrarySupport[];
  swapRule: { maxPartOfWeight: number; order: string[]; words: string };
  under18: { fullWristBackDaysAWeek: number; words: string };
  ladders: LibraryLadder[];
};

/** The ladders, rungs and supports that every new team starts with. Its shape is proved by a test. */
export const STARTER_LIBRARY = data as unknown as Library;
