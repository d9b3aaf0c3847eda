import type { PainRegion } from '#lib/domain/vocabulary.ts';
import type { StartOutcome } from '#lib/planning/start/start-types.ts';

/** A test while it is filled in. */
export type TestDraft = {
  outcome: StartOutcome | null;
  /** Of each set; null: not done. */
  values: (number | null)[];
  tried: number | null;
  clean: boolean | null;
  pain: number | null;
  region: PainRegion | null;
};
