import { tissuesOfRegion } from '#lib/checks/tissues.ts';
import { dayInWords, rungInWords } from '#lib/checks/words.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { placeInWords } from '#lib/domain/labels.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { PainSide, Side } from '#lib/domain/vocabulary.ts';
import { isLineOf, rungOf } from './change-rung.ts';
import { cutVolume } from './cut-volume.ts';
import { type DraftReason, type FilmAsked, NOTHING, type StepContext, type StepDraft } from './step-types.ts';

/** A film is asked for within a week. Own choice. */
const FILM_DAYS = 7;

export function filmOf(rung: HistoryRung, side: Side, { today }: StepContext, angle: string): FilmAsked {
  const byDate = addDays(today, FILM_DAYS);
  const words = `Please film ${rungInWords(rung, side)} ${angle}, by ${dayInWords(byDate)}.`;
  return { rungId: rung.id, side: rung.eachSide ? side : 'both', angle, byDate, words };
}

/** A film of the rung: from behind where the sides are the question. */
export function askFilm(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf(reason, context);
  if (!at) return NOTHING;
  const aboutSides = reason.kind === 'one-side-fault' || reason.kind === 'side-gap';
  const angle = aboutSides
    ? 'from behind, so that hand, shoulder and hip show'
    : 'from the side, all of you in the picture';
  const film = filmOf(at.rung, at.side, context, angle);
  return { ...NOTHING, film, does: [`A film asked for: ${film.words}`], words: film.words };
}

/** The last skill in focus leaves it for now with its drills; with one skill only, less of everything. */
export function dropGoal(reason: DraftReason, context: StepContext): StepDraft {
  const { plan, rungs, today } = context;
  const skill = plan && plan.skillsInFocus.length > 1 ? plan.skillsInFocus.at(-1) : undefined;
  const items = plan?.items.filter((item) => rungs.get(item.rungId)?.skill !== skill) ?? [];
  if (!plan || skill === undefined || items.length === 0) return cutVolume(reason, context);
  const left = plan.skillsInFocus.slice(0, -1).join(' and ');
  const gone = plan.items.length - items.length;
  return {
    ...NOTHING,
    stages: [{ from: today, items, why: `${skill} left out for now` }],
    dropSkills: [skill],
    does: [
      `From today ${skill} leaves the focus with ${gone === 1 ? 'its one line' : `its ${gone} lines`}; ${left} stays.`,
    ],
    words: `For now we leave ${skill} out, so that ${left} gets the time and the rest it needs. It comes back later.`,
  };
}

/** The drill at the start of its sessions. */
export function moreTime(reason: DraftReason, context: StepContext): StepDraft {
  const at = rungOf(reason, context);
  const { plan, today } = context;
  if (!at || !plan?.items.some((item) => isLineOf(item, at.rung, at.side))) return NOTHING;
  const { rung, side } = at;
  const first = plan.items.filter((item) => isLineOf(item, rung, side));
  const others = plan.items.filter((item) => !isLineOf(item, rung, side));
  const name = rungInWords(rung, side);
  return {
    ...NOTHING,
    stages: [{ from: today, items: [...first, ...others], why: `${name} first in the session` }],
    does: [`From today ${name} stands first in its sessions.`],
    words: `From today ${name} comes first, right after the warm-up, while you are fresh.`,
  };
}

/** The place ruled out until a clinician has spoken. Nothing here says what it is. */
export function toClinician(reason: DraftReason, { plan }: StepContext): StepDraft {
  const { region, side } = reason.subject;
  const place = region ? placeInWords(region, side ?? null) : '';
  const words = `Please stop the work that brings this on${place ? ` in the ${place}` : ''}, and see a licensed clinician before it goes on. If it gets worse or something new comes up, do not wait. Tell me what they say.`;
  if (!region || tissuesOfRegion(region).length === 0 || !plan) return { ...NOTHING, words };
  const painSide: PainSide | null = side === 'both' ? null : (side ?? null);
  return {
    ...NOTHING,
    limit: { region, side: painSide },
    does: [`A limit from today: nothing for the ${place}, until you end it on the client page.`],
    words,
  };
}

/** Reasons that ask for words only. */
export function wordsOnly({ kind, step }: DraftReason): StepDraft {
  const words = WORDS[kind];
  return words === undefined ? NOTHING : { ...NOTHING, does: [`${step.text}.`], words };
}

const WORDS: Partial<Record<DraftReason['kind'], string>> = {
  'gone-quiet': 'I have not heard from you for a while. How are things? Training can wait; a line is enough.',
  fading: 'You have trained less of late. What has changed? Two short sessions a week would do for now.',
  'asked-no-answer':
    'I asked you for something and have not had it yet. Is it still possible, or shall I take it back?',
  'pain-after-ground':
    'Please train on something hard for now, not on grass, sand or thick mats, until the wrist is back to its usual.',
  slipping:
    'The last sessions came out lower than before. How are sleep, work and pain? We change nothing before I know.',
};
