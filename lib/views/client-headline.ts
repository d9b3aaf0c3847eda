import { rowOf } from '#lib/checks/urgency.ts';
import type { CheckKind, Level, Tier } from '#lib/domain/vocabulary.ts';

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
  reasons: readonly HeadlineReason[];
  /** Days the checks know of the last 28. */
  daysKnown: number;
  checkIns: number;
  /** Where the client stands, one phrase a ladder and side. */
  standing: readonly string[];
};

const WINDOW_DAYS = 28;
const ENOUGH_DAYS = 21;
const NAMED = 2;

/**
 * How this client is, in two sentences: what leads, then what else is open or where they stand. Key numbers stand
 * between ** **. Never says that all is well: says what was found, and how much is known.
 */
export function clientHeadline(input: HeadlineInput): [string, string] {
  const counted = input.reasons.filter((reason) => reason.tier !== null);
  const lead = counted[rowOf(counted).lead];
  if (input.checkIns === 0 && !lead) {
    return [`${input.name} has not checked in yet.`, 'Nothing is known until the first check-in.'];
  }
  if (!lead) return [`The checks found nothing new for ${input.name}.`, standingOrKnown(input)];
  const others = counted.filter((reason) => reason !== lead);
  return [asSentences(lead.sentence), others.length > 0 ? alsoOpen(others) : standingOrKnown(input)];
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
  if (input.standing.length === 0) return 'No rung is set: the plan places the client on one.';
  const named = input.standing.slice(0, NAMED);
  return `${named.join('; ')}.`;
}

function asSentences(sentence: string): string {
  const trimmed = sentence.trim();
  return /[.?]$/.test(trimmed.replace(/\*+$/, '')) ? trimmed : `${trimmed}.`;
}
