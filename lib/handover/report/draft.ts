import { clientHeadline, type HeadlineReason } from '#lib/views/client-headline.ts';
import { loadView } from '#lib/views/client-load.ts';
import { laddersInSentences, nowInPhrases } from '#lib/views/headline-facts.ts';
import { plainSentence } from '#lib/views/sentence.ts';
import type { ReportInput } from './input.ts';
import { sorePlaces } from './sore-places.ts';

const KNOWN_OF_DAYS = 28;

/** A summary computed from the findings, sentence by sentence: how they are, where they stand, what hurts. */
export function draftSummary(input: ReportInput): string[] {
  const { view, limits, about, history } = input;
  const { client } = history;
  const headline = clientHeadline({
    name: client.name,
    standingAs: client.standing,
    reasons: openReasons(input),
    daysKnown: view.days.slice(-KNOWN_OF_DAYS).filter((one) => one.state !== 'unknown').length,
    checkIns: history.checkIns.length,
    now: nowInPhrases(view, loadView(view, [], limits).panels[0]),
    ladders: laddersInSentences(view, limits),
  });
  const worst = sorePlaces(input)[0];
  return [
    about.goal ? `${client.name} works for this: ${about.goal.replace(/[.\s]+$/, '')}.` : '',
    ...headline,
    worst && worst.recent !== null && worst.recent > 0
      ? `The sorest place of the last 28 days is the ${worst.name}: ${worst.recent} of 10.`
      : '',
  ]
    .filter(Boolean)
    .map(plainSentence);
}

/** What would come next and what would clear it, reason by reason. */
export function draftNext({ record }: Pick<ReportInput, 'record'>): string[] {
  return record.reasons
    .filter((one) => one.closedAt === null && one.proposedStep !== '')
    .map(
      (one) => `${one.proposedStep.replace(/[.\s]+$/, '')}. It would clear when: ${one.clears || 'not said'}`,
    );
}

function openReasons({ record }: ReportInput): HeadlineReason[] {
  return record.reasons.filter((one) => one.closedAt === null && one.tier !== null);
}
