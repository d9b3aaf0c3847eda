import { rowOf, URGENT_KINDS } from '#lib/checks/urgency.ts';
import { printOf } from './board-print.ts';
import { mayBeKnown, ofRow } from './board-reasons.ts';
import type { BoardClient, BoardReason, BoardRow, SaidDate } from './board-types.ts';
import { datedDay, exactDate } from './say-date.ts';
import { sentenceParts } from './sentence.ts';
import { triedInWords } from './steps/tried-in-words.ts';

const QUESTION_SHOWN = 90;

/**
 * One client's row: everything owed to that client, led by what is answered soonest. `reasons`: all that are not closed,
 * held ones too. A question that no check has raised yet is owed as well. Undefined: nothing is owed.
 */
export function toRow(client: BoardClient, reasons: BoardReason[], today: string): BoardRow | undefined {
  const open = ofRow(reasons.filter((reason) => reason.state === 'open' && reason.tier !== null));
  const owed = [...open, ...unraised(client, reasons)];
  const row = rowOf(owed);
  const lead = owed[row.lead];
  if (!lead) return undefined;
  const kinds = [...new Set(owed.map((reason) => reason.kind))];
  const known = knownWords(owed);
  return {
    clientId: client.id,
    name: client.name,
    tier: row.tier,
    points: row.points,
    waitingSince: owed.map((reason) => reason.raisedAt).sort()[0] ?? lead.raisedAt,
    sentence: sentenceParts(lead.sentence),
    // A plan that ends on Sunday has stood here since it was raised, not since Sunday.
    since: sayDate(lead.since > today ? lead.raisedOn : lead.since, today),
    others: otherWords(lead, owed, today),
    kinds,
    step: lead.step.text,
    needsWords: kinds.some((kind) => URGENT_KINDS.includes(kind)),
    onlyQuestion: open.length === 0,
    mayBeKnown: known === null && mayBeKnown(owed, today),
    known,
    questions: client.questions.map(({ id, text, stills }) => ({ id, text, stills })),
    ladderId: lead.subject.ladderId,
    earned: kinds.includes('step-up-earned'),
    print: printOf(JSON.stringify([row.tier, lead.sentence, owed.map((each) => each.short).sort(), known])),
  };
}

/** A date of the coach in the row's words. */
export function sayDate(date: string, today: string): SaidDate {
  return { date, said: datedDay(date, today), exact: exactDate(date) };
}

/** Waiting questions that no reason speaks of yet, as one thing owed. */
function unraised(client: BoardClient, reasons: BoardReason[]): BoardReason[] {
  const [first] = client.questions;
  if (!first || reasons.some((reason) => reason.kind === 'question-waiting')) return [];
  const text = first.text.length > QUESTION_SHOWN ? `${first.text.slice(0, QUESTION_SHOWN)}…` : first.text;
  const count = client.questions.length;
  return [
    {
      id: first.id,
      clientId: client.id,
      kind: 'question-waiting',
      subject: { key: 'question', label: '' },
      level: 'watch',
      points: 0,
      tier: 'this-week',
      sentence: `Asks: “${text.replaceAll('**', '')}”`,
      short: count === 1 ? 'question waiting' : `${count} questions waiting`,
      since: first.askedOn,
      raisedAt: first.askedAt,
      raisedOn: first.askedOn,
      step: { kind: 'answer', text: 'Answer.' },
      clears: 'an answer',
      daysKnown: null,
      state: 'open',
      asideUntil: null,
      withClientUntil: null,
      knownWords: null,
    },
  ];
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
