import type { HistoryRung } from '#lib/domain/history.ts';
import { STARTER_LIBRARY } from '#lib/library/library.ts';

const byKey = new Map<string, HistoryRung>();
for (const ladder of STARTER_LIBRARY.ladders) {
  ladder.rungs.forEach((rung, index) => {
    byKey.set(rung.key, {
      id: rung.key,
      key: rung.key,
      ladderId: ladder.key,
      ladder: ladder.name,
      skill: ladder.skill,
      part: ladder.part,
      position: index + 1,
      name: rung.name,
      family: rung.family ?? ladder.family,
      measure: rung.measure,
      eachSide: rung.per !== 'both',
      eachIsLeg: rung.per === 'leg',
      pass: {
        sets: rung.pass.sets,
        target: rung.pass.target,
        days: rung.pass.days,
        tries: rung.pass.tries ?? null,
      },
      secondsPerRep: rung.secondsPerRep ?? null,
      share: rung.share ?? null,
      helpingShare: rung.helpingShare ?? null,
      weights: rung.weights,
      usualWeeks: rung.usualWeeks,
      needsFilm: rung.needsFilm ?? false,
      faults: ladder.faults,
    });
  });
}

/** A rung of the starter library in the form of a history; its id is its key until it is written to a team. */
export function demoRung(key: string): HistoryRung {
  const rung = byKey.get(key);
  if (!rung) throw new Error(`no rung ${key} in the starter library`);
  return rung;
}

/** The rung after this one on its ladder, or undefined at the top. */
export function rungAfter(key: string): HistoryRung | undefined {
  const { ladderId, position } = demoRung(key);
  return byKey.get(`${ladderId}.${position + 1}`);
}
