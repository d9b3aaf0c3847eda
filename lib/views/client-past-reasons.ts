import { asSentence } from '#lib/domain/labels.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { CheckKind, Tier } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from './board-words.ts';
import { datedDay } from './say-date.ts';
import { OUTCOME_WORDS } from './steps/step-words.ts';
import type { FollowedFrom } from './steps/windows-said.ts';

type Closed = {
  id: string;
  kind: CheckKind;
  tier: Tier | null;
  sentence: string;
  raisedAt: string;
  closedAt: string;
  closedWhy: string | null;
  verdicts: readonly { rightToTell: boolean; text: string; by: string }[];
};
export type PastReasonLine = {
  id: string;
  tier: Tier | null;
  kind: string;
  sentence: string;
  /** "Tue 3 Nov to Mon 9 Nov, closed: 2 clear nights". */
  when: string;
  /** "right to tell, said Ines: the wrist was worse", empty: nobody said. */
  verdict: string;
  /** What was done about it, and what it came to. */
  outcome: string;
};

type Followed = FollowedFrom & { reasonId: string | null };

/**
 * Reasons that are closed, newest first: when, why they closed, what a coach said of them, and what they came to, with a
 * step or with none.
 */
export function pastReasons(
  closed: readonly Closed[],
  followed: { steps: readonly Followed[]; alone: readonly Followed[] },
  about: { zone: string; today: string },
): PastReasonLine[] {
  const dayOf = (instant: string) => datedDay(localDateOf(new Date(instant), about.zone), about.today);
  return closed.map((reason) => ({
    id: reason.id,
    tier: reason.tier,
    kind: asSentence(KIND_WORDS[reason.kind]),
    sentence: reason.sentence,
    when: `${dayOf(reason.raisedAt)} to ${dayOf(reason.closedAt)}${reason.closedWhy ? `, closed: ${reason.closedWhy}` : ''}`,
    verdict: reason.verdicts.map(verdictInWords).join('; '),
    outcome: outcomeInWords(reason.id, followed, about.today),
  }));
}

function verdictInWords({ rightToTell, text, by }: Closed['verdicts'][number]): string {
  return `${rightToTell ? 'right to tell' : 'not needed'}, said ${by}${text ? `: “${text}”` : ''}`;
}

function outcomeInWords(
  reasonId: string,
  { steps, alone }: { steps: readonly Followed[]; alone: readonly Followed[] },
  today: string,
): string {
  const step = steps.find((one) => one.reasonId === reasonId);
  if (step) return `step taken ${datedDay(step.from, today)}${told(step)}`;
  const left = alone.find((one) => one.reasonId === reasonId);
  return left ? `nothing done${told(left)}` : '';
}

function told({ told: windows }: Followed): string {
  if (windows.length === 0) return '';
  return `: ${windows.map((one) => `${OUTCOME_WORDS[one.outcome]} after ${one.windowDays} days`).join(', ')}`;
}
