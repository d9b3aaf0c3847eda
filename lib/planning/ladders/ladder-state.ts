import type { Family, Fault, Measure, Support, Tissue } from '#lib/domain/vocabulary.ts';

/** One ladder as it is edited: all its rungs, those retired among them, and the drills that they are rungs of. */
export type LadderState = {
  id: string;
  partId: string;
  part: string;
  skill: string;
  name: string;
  family: Family;
  /** What clean means on this ladder. */
  clean: string;
  faults: Fault[];
  retired: boolean;
  openings: OpeningState[];
  /** Easiest first. A retired rung stands right after the one it stood above. */
  rungs: RungState[];
  drills: DrillState[];
};

/** What must stand before a rung opens; rungs of any ladder by their ids. */
export type OpeningState = {
  /** The rung of this ladder that opens. */
  opens: string;
  /** All of these; inside one entry any of its rungs will do. */
  needsAll: string[][];
  /** Open at once on one of these. */
  orOnSupports: Support[];
  under18CoachTick: boolean;
  words: string;
};

export type PassMark = {
  sets: number;
  /** In the drill's measure; of tries: how many made. */
  target: number;
  days: number;
  tries: number | null;
};

export type RungState = {
  id: string;
  drillId: string;
  name: string;
  pass: PassMark;
  usualWeeks: number;
  needsFilm: boolean;
  /** What clean means on this rung, where it says more than the ladder. */
  note: string;
  retired: boolean;
  swaps: SwapState[];
};

/** What to do instead while a tissue is sore: another rung, or this one on a support. First choice first. */
export type SwapState = { insteadId: string; tissue: Tissue; support: Support | null; why: string };

export type DrillState = {
  id: string;
  name: string;
  /** Where it is not the ladder's. */
  family: Family | null;
  measure: Measure;
  eachSide: boolean;
  eachIsLeg: boolean;
  /** Under load, a rep or a try; null where the value is seconds already. */
  secondsPerRep: number | null;
  /** Part of body weight on the hands, 0-1, both together; of one side: the working hand. */
  share: number | null;
  helpingShare: number | null;
  shareSource: string;
  /** 0-1 a tissue. */
  weights: Partial<Record<Tissue, number>>;
  equipment: string[];
  /** The head comes below the heart, also on the way in or out. */
  upsideDown: boolean;
  camera: string;
};

export function drillOf(state: LadderState, rung: RungState): DrillState | undefined {
  return state.drills.find((drill) => drill.id === rung.drillId);
}

/** The rungs in use, easiest first. */
export function liveRungs(state: LadderState): RungState[] {
  return state.rungs.filter((rung) => !rung.retired);
}
