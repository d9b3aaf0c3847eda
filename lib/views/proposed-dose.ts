import { exceeds } from '#lib/checks/compare.ts';
import { loadedTissues } from '#lib/checks/limits-on-rung.ts';
import { recentPain } from '#lib/checks/recent-pain.ts';
import { type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { dayInWords, inMeasure } from '#lib/checks/words.ts';
import type { ClientHistory, HistoryRung } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { type DayResult, type DoseProposal, proposeDose, proposePyramid } from '#lib/planning/dose.ts';
import { estimateInWords, estimateOnRung } from '#lib/planning/estimate-on-rung.ts';
import { PAIN_DAYS } from '#lib/planning/gaps/gap-numbers.ts';
import { resultsOn } from '#lib/planning/steps/change-rung.ts';

export type ProposedDose =
  | {
      sets: string;
      target: string;
      /** "4 x 8 s", "4 x 5" for reps. */
      dose: string;
      /** "strength: what was clean of late, 4-5 sets; common practice, no source". */
      why: string;
      /** How long a hold never done may be, as a range with its doubt; empty: no estimate. */
      estimate: string;
    }
  /** "left elbow, inner, 5 of 10 on Tue 24 Nov", or a danger sign: nothing is proposed then. */
  | { sore: string };
/** `pairedWith`: the rung it is trained together with, as a pyramid; empty: none. */
export type DoseOf = (rungId: string, side: Side, pairedWith?: string) => ProposedDose | undefined;

/**
 * Doses proposed from a client's last results, for any rung and side; undefined for a rung that is not known. Where what
 * the rung loads hurt of late, over what a step up would allow, none is proposed, and none for any rung while a danger
 * sign is not cleared: that is the coach's to judge, and a clinician's.
 */
export function proposedDoses(about: {
  history: ClientHistory;
  rungs: readonly HistoryRung[];
  today: string;
  /** A danger sign that is not cleared, in words. */
  danger?: string | undefined;
  /** Numbers of the checks that differ from the defaults. */
  changed?: Partial<Limits>;
}): DoseOf {
  const { history, rungs, today, danger } = about;
  const limits = limitsWith(about.changed ?? {});
  const view = buildView(history, { date: today, instant: `${today}T23:59:59.000Z` }, limits);
  const byId = new Map(rungs.map((rung) => [rung.id, rung]));
  return (rungId, side, pairedWith = '') => {
    const rung = byId.get(rungId);
    if (!rung) return undefined;
    if (danger) return { sore: `${danger}, not cleared yet` };
    const pain = recentPain(view, loadedTissues(rung, limits), PAIN_DAYS);
    if (pain && exceeds(pain.value, limits['stepUpEarned.maxPain'])) {
      const { region, side: where, value, date } = pain;
      return { sore: `${placeInWords(region, where)}, ${value} of 10 on ${dayInWords(date)}` };
    }
    const results = (one: HistoryRung) => resultsOn(one, side, { view });
    const { sets, target, why, source } =
      inPyramid(rung, byId.get(pairedWith), results) ?? proposeDose(rung, results(rung));
    const dose = `${sets} x ${inMeasure(target, rung)}`;
    const found = estimateOnRung(rung, side, { view, rungs });
    const estimate = found ? estimateInWords(found, rung) : '';
    return { sets: String(sets), target: String(target), dose, why: `${why}; ${source}`, estimate };
  };
}

/** The dose of one half of a pyramid: of the harder only until it has results of its own. */
function inPyramid(
  rung: HistoryRung,
  other: HistoryRung | undefined,
  results: (rung: HistoryRung) => DayResult[],
): DoseProposal | undefined {
  if (!other || other.ladderId !== rung.ladderId) return undefined;
  if (rung.position < other.position) return proposePyramid(rung, other, results(rung))?.easier;
  return results(rung).length > 0 ? undefined : proposePyramid(other, rung, results(other))?.harder;
}
