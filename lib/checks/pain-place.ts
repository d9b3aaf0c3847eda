import type { Subject } from '#lib/domain/finding.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import type { LimitId, Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';

/** The subject of a reason about a place that hurts. */
export function painSubject(region: PainRegion, side: PainSide): Subject {
  return { key: `${region}:${side}`, label: placeInWords(region, side), region, side };
}

/** A pain threshold in force for this client: one step stricter under 18. */
export function painLimit(view: ClientView, id: LimitId, limits: Limits): number {
  return limits[id] - (view.history.client.under18 ? limits['grade.under18Stricter'] : 0);
}

/** Whether a clinician's word about this place was recorded in the days named. A word without a place is about all. */
export function hasClinicianWord(
  view: ClientView,
  place: { region: PainRegion | null; side: PainSide | null },
  within: { from?: string; to: string },
): boolean {
  return view.history.clinicianWords.some(
    (word) =>
      word.date <= within.to &&
      word.date >= (within.from ?? '') &&
      (word.region === null || word.region === place.region) &&
      (word.side === null || word.side === place.side),
  );
}

/** What every pain finding says about the model behind it. */
export const PAIN_DOUBT =
  'The grading follows published pain monitoring; the evidence comes from Achilles and knee, not from wrists, elbows or shoulders. It does not diagnose.';
