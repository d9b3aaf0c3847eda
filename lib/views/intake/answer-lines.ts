import type { IntakeAnswers } from '#lib/domain/intake/answers.ts';
import { INTAKE_STEPS, type IntakeStep } from '#lib/domain/intake/draft.ts';
import { HEALTH_LABELS } from '#lib/domain/intake/health-questions.ts';
import { asSentence, DANGER_SIGN_LABELS, GROUND_LABELS, placeInWords } from '#lib/domain/labels.ts';

export type ToldSection = { step: IntakeStep; title: string; lines: string[] };
/** Answers as far as they are there: older forms and other teams leave some out. */
type Told = { [Key in keyof IntakeAnswers]?: IntakeAnswers[Key] | undefined };

export const STEP_TITLES: Record<IntakeStep, string> = {
  you: 'You',
  health: 'Health questions',
  signs: 'Signs to take seriously',
  pain: 'What hurts now',
  week: 'A usual week',
  kit: 'Kit and ground',
  goals: 'What you want',
};

/** The same over what somebody else told. */
const TITLES_OF_ANOTHER: Record<IntakeStep, string> = {
  ...STEP_TITLES,
  you: 'Who',
  goals: 'What is wanted',
};

const LINES: Record<IntakeStep, (told: Told) => (string | undefined)[]> = {
  you: ({ adult, birthYear, bodyMassKg }) => [
    adult === undefined ? undefined : adult ? '18 or older' : 'Under 18',
    birthYear === undefined ? undefined : `Born in ${birthYear}`,
    bodyMassKg === undefined ? undefined : bodyMassKg === null ? 'Body mass: not told' : `${bodyMassKg} kg`,
  ],
  health: ({ health, healthWords }) => [
    ...(health ?? []).map((one) => `Yes: ${HEALTH_LABELS[one]}`),
    health?.length === 0 ? 'No to all of them' : undefined,
    healthWords ? `“${healthWords}”` : undefined,
  ],
  signs: ({ dangerSigns }) => [
    ...(dangerSigns ?? []).map((sign) => asSentence(DANGER_SIGN_LABELS[sign])),
    dangerSigns?.length === 0 ? 'None of them' : undefined,
  ],
  pain: ({ pain }) => [
    ...(pain ?? []).map(
      ({ region, side, value, sinceWeeks }) =>
        `${asSentence(placeInWords(region, side))}: ${value} of 10, ${weeksInWords(sinceWeeks)}`,
    ),
    pain?.length === 0 ? 'Nothing hurts' : undefined,
  ],
  week: ({ week, breakWeeks, otherSport, job }) => [
    week === undefined
      ? undefined
      : `${week.days === 1 ? '1 day' : `${week.days} days`} of ${week.minutes} min, ${week.effort} of 10 hard`,
    breakWeeks === undefined
      ? undefined
      : breakWeeks === 0
        ? 'Trained in the last three weeks'
        : `No training for ${breakWeeks} weeks`,
    otherSport ? `Other sport: ${otherSport}` : undefined,
    job ? `Work: ${job}` : undefined,
  ],
  kit: ({ kit, ground }) => [
    kit === undefined
      ? undefined
      : kit.length === 0
        ? 'No kit'
        : asSentence(kit.map((one) => one.replaceAll('-', ' ')).join(', ')),
    ground ? `Ground: ${GROUND_LABELS[ground]}` : undefined,
  ],
  goals: ({ skills, goal, why }) => [
    skills && skills.length > 0 ? skills.join(', ') : undefined,
    goal ? `“${goal}”` : undefined,
    why ? `Why: “${why}”` : undefined,
  ],
};

/** What was told, page by page in plain lines; a page without a line is left out. */
export function answerLines(told: Told, by: 'own' | 'other' = 'own'): ToldSection[] {
  const titles = by === 'own' ? STEP_TITLES : TITLES_OF_ANOTHER;
  return INTAKE_STEPS.map((step) => ({
    step,
    title: titles[step],
    lines: LINES[step](told).filter((line) => line !== undefined),
  })).filter(({ lines }) => lines.length > 0);
}

/** "since a few days", "for 6 weeks". */
export function weeksInWords(weeks: number): string {
  if (weeks === 0) return 'since a few days';
  return weeks === 1 ? 'for a week' : `for ${weeks} weeks`;
}
