import { URGENT_KINDS } from '#lib/checks/urgency.ts';
import { addDays } from '#lib/domain/local-date.ts';
import type { Tier } from '#lib/domain/vocabulary.ts';
import type { BoardClient, BoardReason, BoardRow, SaidDate } from './board-types.ts';
import { nextCheckIn } from './next-check-in.ts';
import { datedDay, exactDate, saidDate } from './say-date.ts';
import { sentenceParts } from './sentence.ts';
import { type StripDays, toStrip } from './strip.ts';

const OTHERS_SHOWN = 4;

/** One client's row from the open reasons; `row` is what the urgency rules made of them. */
export function toRow(input: {
  client: BoardClient;
  open: BoardReason[];
  row: { tier: Tier; points: number; lead: number };
  today: string;
  lastNight: string;
  strip: StripDays;
}): BoardRow | undefined {
  const { client, open, today } = input;
  const lead = open[input.row.lead];
  if (!lead) return undefined;
  const kinds = [...new Set(open.map((reason) => reason.kind))];
  const dates = input.strip.days.filter((day) => day.state !== 'unknown').map((day) => day.date);
  return {
    clientId: client.id,
    name: client.name,
    tier: input.row.tier,
    points: input.row.points,
    waitingSince: open.map((reason) => reason.raisedAt).sort()[0] ?? lead.raisedAt,
    sentence: sentenceParts(lead.sentence),
    // A plan that ends on Sunday has stood here since it was raised, not since Sunday.
    since: say(lead.since > today ? lead.raisedAt.slice(0, 10) : lead.since, today),
    others: otherWords(lead, open),
    kinds,
    checkedIn: checkedIn(client, today),
    step: lead.step.text,
    needsWords: kinds.some((kind) => URGENT_KINDS.includes(kind)),
    nextCheckIn: say(nextCheckIn(dates, today), today),
    questions: client.questions.map(({ id, text, stills }) => ({ id, text, stills })),
    seen: seenWords(client, today),
    strip: toStrip(input.strip, {
      lastNight: input.lastNight,
      ladderId: lead.subject.ladderId,
      earned: kinds.includes('step-up-earned'),
    }),
  };
}

function say(date: string, today: string): SaidDate {
  return { date, said: datedDay(date, today), exact: exactDate(date) };
}

function otherWords(lead: BoardReason, open: BoardReason[]): string[] {
  const known = lead.daysKnown ? [`${lead.daysKnown.known} of ${lead.daysKnown.of} days known`] : [];
  const others = open.filter((reason) => reason !== lead).map((reason) => reason.short);
  const words = [...new Set([...others, ...known])];
  if (words.length <= OTHERS_SHOWN) return words;
  return [...words.slice(0, OTHERS_SHOWN - 1), `${words.length - OTHERS_SHOWN + 1} more`];
}

function checkedIn(client: BoardClient, today: string): BoardRow['checkedIn'] {
  const last = client.lastCheckIn;
  if (!last) return { said: 'no check-in yet', exact: 'No check-in has come from this client' };
  return {
    said: `checked in ${saidDate(last.date, today)}${last.date > addDays(today, -7) ? ` ${last.time}` : ''}`,
    exact: `Last check-in sent ${exactDate(last.date)}, ${last.time} on the client's clock`,
  };
}

function seenWords(client: BoardClient, today: string): string | null {
  const { seen, lastCheckIn } = client;
  if (!seen) return null;
  const at = `${seen.date} ${seen.time}`;
  if (lastCheckIn && at < `${lastCheckIn.date} ${lastCheckIn.time}`) return null;
  return `seen ${saidDate(seen.date, today)} ${seen.time}`;
}
