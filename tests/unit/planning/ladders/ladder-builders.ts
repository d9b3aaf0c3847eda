import type { DrillFields, RungFields } from '#lib/planning/ladders/ladder-edit.ts';
import type { DrillState, LadderState, RungState } from '#lib/planning/ladders/ladder-state.ts';

export const DRILL: DrillFields = {
  family: null,
  measure: 'hold',
  eachSide: false,
  eachIsLeg: false,
  secondsPerRep: null,
  share: 1,
  helpingShare: null,
  shareSource: 'by definition',
  weights: { 'shoulder-forward': 0.62, 'wrist-back': 0.9 },
  equipment: ['hard-floor'],
  upsideDown: false,
  camera: '',
};

export const MARK: RungFields = {
  name: 'New',
  pass: { sets: 4, target: 10, days: 2, tries: null },
  usualWeeks: 4,
  needsFilm: false,
  note: '',
};

export function rungOf(id: string, over: Partial<RungState> = {}): RungState {
  return { ...MARK, id, name: `Rung ${id}`, drillId: `drill-${id}`, retired: false, swaps: [], ...over };
}

/** A ladder of these rungs, easiest first; each has a drill of its own where none is named. */
export function ladderOf(rungs: RungState[], over: Partial<LadderState> = {}): LadderState {
  const ids = [...new Set(rungs.map((rung) => rung.drillId))];
  const drills: DrillState[] = ids.map((id) => ({ ...DRILL, id, name: id }));
  return {
    id: 'ladder',
    partId: 'part',
    part: 'Planche',
    skill: 'Planche',
    name: 'Planche holds',
    family: 'straight-arm-push',
    clean: 'elbows straight',
    faults: ['elbow-bends'],
    retired: false,
    openings: [],
    rungs,
    drills,
    ...over,
  };
}

/** Ids a, b, c in the order they were asked for, with a mark that they are new. */
export function newIds(): () => string {
  let count = 0;
  return () => `new-${++count}`;
}
