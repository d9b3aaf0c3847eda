import { libraryRows } from '#lib/library/copy-plan.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';
import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';

/** The ladders of the starter library as a team has them on its first day, under ids made of their keys. */
export function starterLadders(): LadderState[] {
  let next = 0;
  const rows = libraryRows(
    STARTER_LIBRARY,
    () => `00000000-0000-4000-8000-${String(++next).padStart(12, '0')}`,
  );
  return rows.ladders.map(({ ladder, ...row }) => ({
    id: row.id,
    partId: row.partId,
    part: ladder.part,
    skill: ladder.skill,
    name: ladder.name,
    family: ladder.family,
    clean: ladder.clean,
    faults: ladder.faults,
    retired: false,
    openings: [],
    rungs: rows.rungs
      .filter((one) => one.ladderId === row.id)
      .map(({ id, drillId, rung }) => ({
        id,
        drillId,
        name: rung.name,
        pass: { ...rung.pass, tries: rung.pass.tries ?? null },
        usualWeeks: rung.usualWeeks,
        needsFilm: rung.needsFilm ?? false,
        note: rung.note ?? '',
        retired: false,
        swaps: [],
      })),
    drills: rows.drills
      .filter((one) => one.ladderId === row.id)
      .map(({ id, camera, rung }) => ({
        id,
        name: rung.name,
        family: rung.family ?? null,
        measure: rung.measure,
        eachSide: rung.per !== 'both',
        eachIsLeg: rung.per === 'leg',
        secondsPerRep: rung.secondsPerRep ?? null,
        share: rung.share ?? null,
        helpingShare: rung.helpingShare ?? null,
        shareSource: rung.shareSource ?? '',
        weights: rung.weights,
        equipment: rung.equipment,
        upsideDown: rung.upsideDown ?? false,
        camera,
      })),
  }));
}
