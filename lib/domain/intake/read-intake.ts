import { REGION_LABELS } from '../labels.ts';
import { type AmountKind, parseAmount } from '../parse-amount.ts';
import type { IntakeAnswers } from './answers.ts';
import {
  agedSteps,
  EMPTY_PAGES,
  INTAKE_STEPS,
  type IntakeDraft,
  type IntakePages,
  type IntakeStep,
  NOW_DAYS,
} from './draft.ts';
import { HEALTH_ASKED, HEALTH_QUESTIONS } from './health-questions.ts';

/** What keeps a page from being sent: where, and what to do. */
export type IntakeRefusal = { step: IntakeStep; field: string; message: string };
/** Today's instant (ISO) and the year of the client's own day; whether a guardian is named already. */
export type IntakeNow = { now: string; year: number; guardianNamed: boolean };

const OLDEST = 110;
const YOUNGEST = 6;
const ADULT = 18;
const MASS_KG = { least: 20, most: 300 };
/** Longest that a person remembers in weeks: 20 years. Own choice. */
const LONGEST_WEEKS = 1_040;
const BREAK_FROM_WEEKS = 3;

/** The pages as answers, or everything that is missing or cannot be, page by page in their order. */
export function readIntake(
  draft: IntakeDraft,
  at: IntakeNow,
): { answers: IntakeAnswers } | { refusals: IntakeRefusal[] } {
  const refusals = INTAKE_STEPS.flatMap((step) => refusalsOf(step, draft, at));
  if (refusals.length > 0) return { refusals };
  const { you, health, signs, pain, week, kit, goals } = pagesOf(draft);
  const trains = week.trains === 'yes';
  return {
    answers: {
      adult: you.adult === 'yes',
      birthYear: whole(you.birthYear),
      bodyMassKg: you.bodyMassKg.trim() === '' ? null : amount(you.bodyMassKg, 'kg'),
      health: HEALTH_QUESTIONS.filter((question) => health.said[question] === 'yes'),
      healthWords: health.words.trim(),
      dangerSigns: signs.signs,
      pain: pain.places.map(({ region, side, value, sinceWeeks }) => ({
        region,
        side,
        value: value ?? 0,
        sinceWeeks: amount(sinceWeeks, 'count'),
      })),
      week: { days: whole(week.days), minutes: amount(week.minutes, 'minutes'), effort: week.effort ?? 0 },
      breakWeeks: trains ? 0 : amount(week.breakWeeks, 'count'),
      otherSport: week.otherSport.trim(),
      job: week.job.trim(),
      kit: kit.kit,
      ground: kit.ground,
      skills: goals.skills,
      goal: goals.goal.trim(),
      why: goals.why.trim(),
    },
  };
}

/** Whether somebody born in a year is under 18 in all of another; in the year of the eighteenth birthday it is not known. */
export function isUnder18(born: number, year: number): boolean {
  return year - born < ADULT;
}

/** The pages with nothing said where nothing was filled in. */
export function pagesOf(draft: IntakeDraft): IntakePages {
  const filled = INTAKE_STEPS.map((step) => [step, draft[step]?.page ?? EMPTY_PAGES[step]]);
  return Object.fromEntries(filled) as IntakePages;
}

/** What keeps one page from being complete. */
export function refusalsOf(step: IntakeStep, draft: IntakeDraft, at: IntakeNow): IntakeRefusal[] {
  const pages = pagesOf(draft);
  const said: [string, string][] = agedSteps(draft, at.now).includes(step)
    ? [[step, `was told more than ${NOW_DAYS} days ago: say how it is now`]]
    : ofPage[step](pages, at);
  return said.map(([field, message]) => ({ step, field, message }));
}

type Said = [field: string, message: string][];
const ofPage: Record<IntakeStep, (pages: IntakePages, at: IntakeNow) => Said> = {
  you: ({ you }, at) => [...ofAge(you, at), ...ofMass(you.bodyMassKg), ...ofGuardian(you, at)],
  health: ({ health }) =>
    HEALTH_QUESTIONS.filter((question) => !health.said[question]).map((question) => [
      `health.${question}`,
      `say yes or no: ${HEALTH_ASKED[question]}`,
    ]),
  signs: ({ signs }) =>
    signs.none || signs.signs.length > 0 ? [] : [['signs', 'say which of these there are, or none of them']],
  pain: ({ pain }) => ofPain(pain),
  week: ({ week }) => ofWeek(week),
  kit: ({ kit }) => (kit.ground === null ? [['ground', 'say what ground you train on most']] : []),
  goals: ({ goals }) =>
    goals.skills.length === 0 && goals.goal.trim() === ''
      ? [['goal', 'choose a skill, or say in your words what you want to be able to do']]
      : [],
};

function ofAge({ adult, birthYear }: IntakePages['you'], { year }: IntakeNow): Said {
  const said: Said = [];
  if (adult === null) said.push(['adult', 'say whether you are 18 or older']);
  const born = /^\d{4}$/.test(birthYear.trim()) ? Number(birthYear) : Number.NaN;
  if (!(born >= year - OLDEST && born <= year - YOUNGEST)) {
    said.push(['birthYear', `write a year between ${year - OLDEST} and ${year - YOUNGEST}`]);
    return said;
  }
  if (adult === 'yes' && isUnder18(born, year))
    said.push(['birthYear', `does not go with “18 or older”: ${born} is under 18. Change one of the two`]);
  if (adult === 'no' && year - born > ADULT)
    said.push(['birthYear', `does not go with “under 18”: ${born} is over 18. Change one of the two`]);
  return said;
}

function ofMass(text: string): Said {
  if (text.trim() === '') return [];
  const kg = parseAmount(text, 'kg');
  return kg !== undefined && kg >= MASS_KG.least && kg <= MASS_KG.most
    ? []
    : [
        [
          'bodyMassKg',
          `write kilograms between ${MASS_KG.least} and ${MASS_KG.most}, such as 64,5; or leave it empty`,
        ],
      ];
}

function ofGuardian(you: IntakePages['you'], { guardianNamed }: IntakeNow): Said {
  if (you.adult !== 'no') return [];
  const said: Said = [];
  if (!guardianNamed && you.guardianName.trim() === '')
    said.push(['guardianName', 'name a parent or guardian: they have to agree before you train']);
  const email = you.guardianEmail.trim();
  if (email !== '' && !/^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(email))
    said.push(['guardianEmail', 'is not an e-mail address; leave it empty and your coach asks for it']);
  return said;
}

function ofPain({ nothing, places }: IntakePages['pain']): Said {
  if (nothing && places.length > 0)
    return [['pain', 'says that nothing hurts and names a place: take one of them back']];
  if (!nothing && places.length === 0) return [['pain', 'tap where it hurts, or “Nothing hurts”']];
  return places.flatMap(({ region, side, value, sinceWeeks }): Said => {
    const where = `pain.${region}.${side}`;
    const label = REGION_LABELS[region];
    const said: Said = [];
    if (value === null) said.push([`${where}.value`, `${label}: say how much, 0 to 10`]);
    if (!isWithin(sinceWeeks, 'count', 0, LONGEST_WEEKS))
      said.push([
        `${where}.sinceWeeks`,
        `${label}: say for how many weeks, 0 to ${LONGEST_WEEKS}; 0 is since a few days`,
      ]);
    return said;
  });
}

function ofWeek(week: IntakePages['week']): Said {
  const said: Said = [];
  if (week.trains === null) said.push(['trains', 'say whether you trained in the last three weeks']);
  if (week.trains === 'no' && !isWithin(week.breakWeeks, 'count', BREAK_FROM_WEEKS, LONGEST_WEEKS))
    said.push([
      'breakWeeks',
      `write how many weeks without training, ${BREAK_FROM_WEEKS} to ${LONGEST_WEEKS}; fewer is “yes” above`,
    ]);
  if (!isWithin(week.days, 'count', 0, 7) || !/^\d+$/.test(week.days.trim()))
    said.push(['days', 'write whole days a week, 0 to 7']);
  if (!isWithin(week.minutes, 'minutes', 0, 300))
    said.push(['minutes', 'write minutes a session, 0 to 300, such as 45 or 1:15']);
  if (week.effort === null) said.push(['effort', 'say how hard a usual session is, 0 to 10']);
  return said;
}

function isWithin(text: string, kind: AmountKind, least: number, most: number): boolean {
  const value = parseAmount(text, kind);
  return value !== undefined && value >= least && value <= most;
}

function amount(text: string, kind: AmountKind): number {
  return parseAmount(text, kind) ?? 0;
}

function whole(text: string): number {
  return Math.round(Number(text.trim()));
}
