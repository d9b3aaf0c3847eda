import type { DangerSign, Ground, PainRegion, PainSide } from '../vocabulary.ts';
import type { HealthQuestion } from './health-questions.ts';

/** The pages of the intake, in the order in which they are asked. */
export const INTAKE_STEPS = ['you', 'health', 'signs', 'pain', 'week', 'kit', 'goals'] as const;
export type IntakeStep = (typeof INTAKE_STEPS)[number];

export type YesNo = 'yes' | 'no';
/** Each page as it was filled in: what was typed stays as typed until it is sent. */
export type IntakePages = {
  you: {
    adult: YesNo | null;
    birthYear: string;
    bodyMassKg: string;
    guardianName: string;
    guardianEmail: string;
  };
  health: { said: Partial<Record<HealthQuestion, YesNo>>; words: string };
  signs: { none: boolean; signs: DangerSign[] };
  pain: { nothing: boolean; places: DraftPlace[] };
  week: {
    /** Trained in the last three weeks. */
    trains: YesNo | null;
    breakWeeks: string;
    days: string;
    minutes: string;
    effort: number | null;
    otherSport: string;
    job: string;
  };
  kit: { kit: string[]; ground: Ground | null };
  goals: { skills: string[]; goal: string; why: string };
};
export type DraftPlace = { region: PainRegion; side: PainSide; value: number | null; sinceWeeks: string };

/** A page with the instant (ISO) of its last change. */
export type KeptPage<Step extends IntakeStep> = { at: string; page: IntakePages[Step] };
export type IntakeDraft = { [Step in IntakeStep]?: KeptPage<Step> | undefined };

export const EMPTY_PAGES: IntakePages = {
  you: { adult: null, birthYear: '', bodyMassKg: '', guardianName: '', guardianEmail: '' },
  health: { said: {}, words: '' },
  signs: { none: false, signs: [] },
  pain: { nothing: false, places: [] },
  week: { trains: null, breakWeeks: '', days: '', minutes: '', effort: null, otherSport: '', job: '' },
  kit: { kit: [], ground: null },
  goals: { skills: [], goal: '', why: '' },
};

/**
 * Two copies of one intake as one, page by page: the later change of each page stands. Pages that only one copy has are
 * kept, so that nothing told on either phone is lost.
 */
export function mergeDrafts(one: IntakeDraft, other: IntakeDraft): IntakeDraft {
  const merged: Partial<Record<IntakeStep, unknown>> = {};
  for (const step of INTAKE_STEPS) {
    const [a, b] = [one[step], other[step]];
    const later = a && b ? (Date.parse(b.at) > Date.parse(a.at) ? b : a) : (a ?? b);
    if (later) merged[step] = later;
  }
  return merged as IntakeDraft;
}

/** How long what hurts now is now: days. Own choice. */
export const NOW_DAYS = 3;
const DAY_MS = 86_400_000;
const AGEING: readonly IntakeStep[] = ['signs', 'pain'];

/** Pages that say how it is now and were filled in more than three days ago: they are asked again. */
export function agedSteps(draft: IntakeDraft, now: string): IntakeStep[] {
  return AGEING.filter((step) => {
    const at = draft[step]?.at;
    return at !== undefined && Date.parse(now) - Date.parse(at) > NOW_DAYS * DAY_MS;
  });
}
