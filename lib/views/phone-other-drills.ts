import type { HistoryCheckIn, HistoryRung } from '#lib/domain/history.ts';
import type { Fault, Measure } from '#lib/domain/vocabulary.ts';

/** A drill that can be added to a session that did not plan it. */
export type OtherDrill = {
  rungId: string;
  rung: string;
  ladder: string;
  measure: Measure;
  eachSide: boolean;
  faults: Fault[];
  /** Where the stepper starts: the pass mark of the rung, in the unit of its measure. */
  target: number;
  tries: number | null;
  /** Local date it was done last; null: not of late. */
  lastDone: string | null;
};
type Standing = { ladderId: string; rungId: string };

/** How far from where the client stands rungs are offered: own choice, kept short for a phone. */
const RUNGS_BELOW = 3;
const RUNGS_ABOVE = 1;
/** More than this is no list for one thumb (own choice). */
const MOST = 60;

/**
 * What the phone offers when something else was trained: what was done of late, newest first, then the rungs about where
 * the client stands on each ladder, easiest first. `recent`: effective check-ins, newest first; rungs that are neither
 * known nor near are left out.
 */
export function otherDrills(
  rungs: readonly HistoryRung[],
  standing: readonly Standing[],
  recent: readonly HistoryCheckIn[],
): OtherDrill[] {
  const lastDone = new Map<string, string>();
  for (const { date, sets } of recent) {
    for (const { rungId } of sets) if (!lastDone.has(rungId)) lastDone.set(rungId, date);
  }
  const byId = new Map(rungs.map((rung) => [rung.id, rung]));
  const done = [...lastDone.keys()].flatMap((id) => byId.get(id) ?? []);
  const near = rungs.filter((rung) => !lastDone.has(rung.id) && isNear(rung, standing, byId));
  return [...done, ...near].slice(0, MOST).map((rung) => ({
    rungId: rung.id,
    rung: rung.name,
    ladder: rung.ladder,
    measure: rung.measure,
    eachSide: rung.eachSide,
    faults: rung.faults,
    target: rung.pass.target,
    tries: rung.measure === 'made-tried' ? rung.pass.tries : null,
    lastDone: lastDone.get(rung.id) ?? null,
  }));
}

function isNear(
  rung: HistoryRung,
  standing: readonly Standing[],
  byId: ReadonlyMap<string, HistoryRung>,
): boolean {
  return standing.some(({ ladderId, rungId }) => {
    const stands = ladderId === rung.ladderId ? byId.get(rungId) : undefined;
    if (!stands) return false;
    const up = rung.position - stands.position;
    return up <= RUNGS_ABOVE && up >= -RUNGS_BELOW;
  });
}
