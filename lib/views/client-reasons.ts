import { rowOf } from '#lib/checks/urgency.ts';
import type { CheckKind, Level, Tier } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from './board-words.ts';
import { exactDate, saidDate } from './say-date.ts';

type Stored = {
  id: string;
  kind: CheckKind;
  level: Level;
  points: number;
  tier: Tier | null;
  state: string;
  sentence: string;
  short: string;
  since: string;
  raisedAt: string;
  asideUntil: string | null;
  withClientUntil: string | null;
  step: { text: string };
};
export type ReasonLine = {
  id: string;
  tier: Tier | null;
  kind: string;
  sentence: string;
  since: string;
  sinceExact: string;
  state: string;
};
export type ReasonsView = { lines: ReasonLine[]; step: string; stepReason: string | null };

/** The open reasons in the order of answering, notes last, with the step that the leading one proposes. */
export function reasonsView(reasons: readonly Stored[], today: string): ReasonsView {
  const left = [...reasons];
  const ordered: Stored[] = [];
  while (left.length > 0) {
    const lead = Math.max(0, rowOf(left).lead);
    ordered.push(...left.splice(lead, 1));
  }
  const lead = ordered.find((reason) => reason.tier !== null);
  return {
    lines: ordered.map((reason) => ({
      id: reason.id,
      tier: reason.tier,
      kind: KIND_WORDS[reason.kind],
      sentence: reason.sentence,
      since: saidDate(reason.since, today),
      sinceExact: exactDate(reason.since),
      state: stateInWords(reason, today),
    })),
    step: lead?.step.text ?? '',
    stepReason: lead?.id ?? null,
  };
}

function stateInWords(reason: Stored, today: string): string {
  if (reason.state === 'client-page') return 'new, not yet counted';
  if (reason.state === 'aside')
    return reason.asideUntil ? `put aside until ${saidDate(reason.asideUntil, today)}` : 'put aside';
  if (reason.state === 'with-client') {
    return reason.withClientUntil
      ? `with the client until ${saidDate(reason.withClientUntil, today)}`
      : 'with the client';
  }
  return reason.level === 'note' ? 'a note' : '';
}
