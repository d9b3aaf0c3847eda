import type { HistoryRung } from '#lib/domain/history.ts';
import type { LibraryLadder, LibraryRung } from './library.ts';

/** A rung of the starter library in the form of a history; its ids are its keys until it is written to a team. */
export function libraryHistoryRung(ladder: LibraryLadder, rung: LibraryRung): HistoryRung {
  return {
    id: rung.key,
    key: rung.key,
    ladderId: ladder.key,
    ladder: ladder.name,
    skill: ladder.skill,
    part: ladder.part,
    position: ladder.rungs.indexOf(rung) + 1,
    name: rung.name,
    family: rung.family ?? ladder.family,
    measure: rung.measure,
    eachSide: rung.per !== 'both',
    eachIsLeg: rung.per === 'leg',
    pass: { ...rung.pass, tries: rung.pass.tries ?? null },
    secondsPerRep: rung.secondsPerRep ?? null,
    share: rung.share ?? null,
    helpingShare: rung.helpingShare ?? null,
    weights: rung.weights,
    upsideDown: rung.upsideDown ?? false,
    usualWeeks: rung.usualWeeks,
    needsFilm: rung.needsFilm ?? false,
    faults: ladder.faults,
  };
}
