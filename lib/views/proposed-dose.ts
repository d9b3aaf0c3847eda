import { buildView } from '#lib/checks/view.ts';
import { inMeasure } from '#lib/checks/words.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { proposeDose } from '#lib/planning/dose.ts';
import { resultsOn } from '#lib/planning/steps/change-rung.ts';

export type ProposedDose = {
  sets: string;
  target: string;
  /** "4 x 8 s", "4 x 5" for reps. */
  dose: string;
  /** "strength: what was clean of late, 4-5 sets; common practice, no source". */
  why: string;
};
export type DoseOf = (rungId: string, side: Side) => ProposedDose | undefined;

/** Doses proposed from a client's last results, for any rung and side; undefined for a rung that is not known. */
export function proposedDoses(about: {
  history: ClientHistory;
  rungs: readonly HistoryRung[];
  yesterday: string;
}): DoseOf {
  const { history, rungs, yesterday } = about;
  const view = buildView(history, { date: yesterday, instant: `${yesterday}T23:59:59.000Z` });
  const byId = new Map(rungs.map((rung) => [rung.id, rung]));
  return (rungId, side) => {
    const rung = byId.get(rungId);
    if (!rung) return undefined;
    const { sets, target, why, source } = proposeDose(rung, resultsOn(rung, side, { view }));
    const dose = `${sets} x ${inMeasure(target, rung)}`;
    return { sets: String(sets), target: String(target), dose, why: `${why}; ${source}` };
  };
}
