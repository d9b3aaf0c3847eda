import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { Flagged } from '#lib/domain/finding.ts';
import type { HistoryPlan, HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import type { PainRegion, PainSide, Side } from '#lib/domain/vocabulary.ts';

/** What a draft reads of an open reason. */
export type DraftReason = Pick<Flagged, 'kind' | 'subject' | 'step' | 'evidence'>;
export type StepContext = {
  view: ClientView;
  /** The newest version, whether it has begun or not. */
  plan: HistoryPlan | undefined;
  /** The client's own day: the first of what is proposed. */
  today: string;
  /** Rungs of the plan, and every rung of the reason's ladder that can be planned. */
  rungs: ReadonlyMap<string, HistoryRung>;
  limits: Limits;
};

/** A version of the plan from a day on. `rungId`: the rung whose lines others take the place of, where it is about one. */
export type PlanStage = { from: string; items: HistoryPlanItem[]; why: string; rungId?: string | undefined };
export type FilmAsked = { rungId: string; side: Side; angle: string; byDate: string; words: string };

/** What taking a proposed step would do; a coach reads it, may change the words, and takes it in one action. */
export type StepDraft = {
  /** Versions of the plan that would be kept, the earliest first; none: the plan stays as it is. */
  stages: PlanStage[];
  /** Skills that leave the focus for now. */
  dropSkills: string[];
  film: FilmAsked | null;
  /** A place that is ruled out until further word. */
  limit: { region: PainRegion; side: PainSide | null } | null;
  /** In plain lines for the coach. */
  does: string[];
  /** To the client, for the coach to change. */
  words: string;
};

export const NOTHING: StepDraft = {
  stages: [],
  dropSkills: [],
  film: null,
  limit: null,
  does: [],
  words: '',
};
