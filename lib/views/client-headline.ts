import { rowOf } from '#lib/checks/urgency.ts';
import type { CheckKind, Level, Standing, Tier } from '#lib/domain/vocabulary.ts';

export type HeadlineReason = {
  kind: CheckKind;
  level: Level;
  points: number;
  tier: Tier | null;
  sentence: string;
  short: string;
  raisedAt: string;
};
export type HeadlineInput = {
  name: string;
  standingAs: Standing;
  reasons: readonly HeadlineReason[];
  /** Days the checks know of the last 28. */
  daysKnown: number;
  checkIns: number;
  /** The last week's load and the worst pain of 28 days, one phrase each. */
  now: readonly string[];
  /** Where the client stands, one sentence a ladder, that of the goal first. */
  ladders: readonly string[];
};

const WINDOW_DAYS = 28;
const ENOUGH_DAYS = 21;
const NAMED = 2;
/** Nights do not run for them: no news of theirs is no finding. */
const NOT_CHECKED: Partial<Record<Standing, string>> = {
  invited: 'is invited and has not come in yet',
  paused: 'is paused: no night checks, and nothing is waited for',
  left: 'has left: no night checks',
};

/**
 * How this client is, in two sentences: what leads; then what else is open, what belongs to it, or where they stand. Key
 * numbers stand between ** **. Never says that all is well: says what was found, and how much is known.
 */
export function clientHeadline(input: HeadlineInput): [string, string] {
  const counted = input.reasons.filter((reason) => reason.tier !== null);
  const lead = counted[rowOf(counted).lead];
  if (!lead) return withoutReason(input);
  const others = counted.filter((reason) => reason !== lead);
  const [first, rest] = firstSentence(lead.sentence);
  if (others.length > 0) return [first, alsoOpen(others)];
  return [first, rest === '' ? standingOrKnown(input) : rest];
}

function withoutReason(input: HeadlineInput): [string, string] {
  const { name, standingAs, checkIns, now } = input;
  const away = NOT_CHECKED[standingAs];
  if (away) return [`${name} ${away}.`, input.ladders[0] ?? 'No rung is set.'];
  if (checkIns === 0)
    return [`${name} has not checked in yet.`, 'Nothing is known until the first check-in.'];
  const also = now.length > 0 ? `: ${now.join(', ')}` : '';
  return [`The checks found nothing new for ${name}${also}.`, standingOrKnown(input)];
}

function alsoOpen(others: readonly HeadlineReason[]): string {
  const named = others.slice(0, NAMED).map((reason) => reason.short);
  const more = others.length - named.length;
  return `Also open: ${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}.`;
}

function standingOrKnown(input: HeadlineInput): string {
  if (input.daysKnown < ENOUGH_DAYS) {
    return `**${input.daysKnown} of ${WINDOW_DAYS} days** are known, so most checks are still counting.`;
  }
  return input.ladders[0] ?? 'No rung is set: the plan places the client on one.';
}

/** The first sentence of a reason, and the next one where it has one; a stop inside a number or quote ends nothing. */
function firstSentence(sentence: string): [string, string] {
  const trimmed = sentence.trim();
  const end = /[.?](?:\*\*)? (?=[A-Z])/.exec(trimmed);
  const isQuoted =
    end && trimmed.slice(0, end.index).includes('“') && !trimmed.slice(0, end.index).includes('”');
  if (!end || isQuoted) return [asSentence(trimmed), ''];
  const next = trimmed.slice(end.index + end[0].length);
  const nextEnd = /[.?](?:\*\*)? (?=[A-Z])/.exec(next);
  return [
    trimmed.slice(0, end.index + end[0].length).trim(),
    asSentence(nextEnd ? next.slice(0, nextEnd.index) : next),
  ];
}

function asSentence(words: string): string {
  return /[.?”]$/.test(words.replace(/\*+$/, '')) ? words : `${words}.`;
}
