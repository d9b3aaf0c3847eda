import { rowOf, URGENT_KINDS } from '#lib/checks/urgency.ts';
import { printOf } from './board-print.ts';
import { mayBeKnown, ofRow } from './board-reasons.ts';
import type { BoardBrief, BoardClient, BoardReason, BoardRow, SaidDate } from './board-types.ts';
import { datedDay, exactDate } from './say-date.ts';
import { sentenceParts } from './sentence.ts';
import { triedInWords } from './steps/tried-in-words.ts';

const QUESTION_SHOWN = 90;
const UNRAISED = 'an answer';

/** A row before its words: what is owed to the client, and which of it leads. */
export type Owed = BoardBrief & { client: BoardClient; owed: BoardReason[]; lead: BoardReason };

/**
 * Everything owed to one client, led by what is answered soonest. `reasons`: all that are not closed, held ones too. A
 * question that no check has raised yet is owed as well. Undefined: nothing is owed.
 */
export function owedTo(client: BoardClient, reasons: readonly BoardReason[]): Owed | undefined {
  const open = ofRow(
    reasons.filter((reason) => reason.state === 'open' && reason.tier !== null),
    reasons,
  );
  const owed = [...open, ...unraised(client, reasons)];
  const row = rowOf(owed);
  const lead = owed[row.lead];
  if (!lead) return undefined;
  const known = knownWords(owed);
  const shorts = owed.map((each) => each.short).sort();
  return {
    clientId: client.id,
    name: client.name,
    tier: row.tier,
    points: row.points,
    waitingSince: owed.map((reason) => reason.raisedAt).sort()[0] ?? lead.raisedAt,
    kinds: [...new Set(owed.map((reason) => reason.kind))],
    known,
    questions: client.questions.length,
    print: printOf([row.tier, lead.sentence, known, ...shorts].join('|')),
    client,
    owed,
    lead,
  };
}

/** The row in words. */
export function toRow({ client, owed, lead, questions: _, ...brief }: Owed, today: string): BoardRow {
  return {
    ...brief,
    sentence: sentenceParts(lead.sentence),
    // A plan that ends on Sunday has stood here since it was raised, not since Sunday.
    since: sayDate(lead.since > today ? lead.raisedOn : lead.since, today),
    others: otherWords(lead, owed, today),
    step: lead.step,
    needsWords: brief.kinds.some((kind) => URGENT_KINDS.includes(kind)),
    onlyQuestion: owed.every(isQuestionAlone),
    mayBeKnown: brief.known === null && mayBeKnown(owed, today),
    questions: client.questions.map(({ id, text, stills }) => ({ id, text, stills })),
    ladderId: lead.ladderId ?? undefined,
    earned: brief.kinds.includes('step-up-earned'),
  };
}

/** A date of the coach in the row's words. */
export function sayDate(date: string, today: string): SaidDate {
  return { date, said: datedDay(date, today), exact: exactDate(date) };
}

/** Waiting questions that no reason speaks of yet, as one thing owed. */
function unraised(client: BoardClient, reasons: readonly BoardReason[]): BoardReason[] {
  const [first] = client.questions;
  if (!first || reasons.some((reason) => reason.kind === 'question-waiting')) return [];
  const text = first.text.length > QUESTION_SHOWN ? `${first.text.slice(0, QUESTION_SHOWN)}…` : first.text;
  const count = client.questions.length;
  return [
    {
      id: first.id,
      clientId: client.id,
      kind: 'question-waiting',
      ladderId: null,
      level: 'watch',
      points: 0,
      tier: 'this-week',
      sentence: `Asks: “${text.replaceAll('**', '')}”`,
      short: count === 1 ? 'question waiting' : `${count} questions waiting`,
      since: first.askedOn,
      raisedAt: first.askedAt,
      raisedOn: first.askedOn,
      step: 'Answer.',
      clears: UNRAISED,
      daysKnown: null,
      state: 'open',
      asideUntil: null,
      withClientUntil: null,
      knownWords: null,
    },
  ];
}

/** What no check has raised has no id that an act could name. */
function isQuestionAlone(reason: BoardReason): boolean {
  return reason.clears === UNRAISED;
}

/** Folded only while everything that is owed was folded: something new unfolds the row. */
function knownWords(owed: BoardReason[]): string | null {
  const words = owed.map((reason) => reason.knownWords);
  return words.every((each) => each !== null) ? (words[0] ?? null) : null;
}

function otherWords(lead: BoardReason, owed: BoardReason[], today: string): string[] {
  const tried = lead.tried ? [triedInWords({ ...lead.tried, today })] : [];
  const known = lead.daysKnown ? [`${lead.daysKnown.known} of ${lead.daysKnown.of} days known`] : [];
  const others = owed.filter((reason) => reason !== lead).map((reason) => reason.short);
  return [...new Set([...tried, ...others, ...known])];
}
