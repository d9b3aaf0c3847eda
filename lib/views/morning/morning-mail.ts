import { compareRows, type RowReason, rowOf } from '#lib/checks/urgency.ts';
import { type CheckKind, TIERS, type Tier } from '#lib/domain/vocabulary.ts';
import { ofRow } from '../board-reasons.ts';
import { countWords, KIND_WORDS, TIER_TITLE } from '../board-words.ts';
import { isDoneSoFar, laterWords, type NightCounts } from '../night-so-far.ts';
import { datedDay, longDate } from '../say-date.ts';

export type MorningReason = RowReason & {
  clientId: string;
  /** Raised, reopened or worse: the last time something about it was new. */
  newAt: string;
  since: string;
};
export type MorningInput = {
  /** The member's local date. */
  today: string;
  /** The last decided morning: what came after it is new. */
  lastAt: string;
  clients: readonly { id: string; name: string }[];
  /** Open reasons that stand on the board. */
  reasons: readonly MorningReason[];
  /** Waiting questions, oldest first; `askedOn`: date of the member. */
  questions: readonly { clientId: string; askedAt: string; askedOn: string; danger: boolean }[];
  /** The last night; `missed`: clients of this mail that it did not reach. */
  night:
    | ({
        localDate: string;
        endedAt: string | null;
        missed: readonly string[];
      } & NightCounts)
    | null;
  /** Whom the member covers today, and until when. */
  covered: readonly { name: string; to: string }[];
  /** Address of the product, without a slash at the end. */
  origin: string;
};
export type MorningMail = { subject: string; text: string; isNew: boolean };

type Row = {
  name: string;
  tier: Tier;
  points: number;
  waitingSince: string;
  kinds: CheckKind[];
  isNew: boolean;
  since: string;
};

/**
 * The board in words for one mail: names and kinds of reason only, since mails cross machines of others in the clear; no
 * numbers, places or words of clients. New is what was raised, reopened or got worse, asked or missed by the night
 * since `lastAt`, and whatever stands in now.
 */
export function morningMail(input: MorningInput): MorningMail {
  const rows = rowsOf(input);
  const questions = input.questions;
  const isNew =
    rows.some((row) => row.isNew || row.tier === 'now') ||
    questions.some((question) => question.askedAt > input.lastAt) ||
    (input.night?.missed.length ?? 0) > 0;
  const parts = [
    ...TIERS.map((tier) => group(tier, rows, input.today)),
    rows.length === 0 ? `The checks found nothing for ${people(input.clients.length)}.` : '',
    questionWords(input),
    nightWords(input),
    coverWords(input),
    `The board: ${input.origin}/`,
    `What was measured and said stands on the board only: mails are not encrypted on all of their way.\nWhen this mail comes, and whether: ${input.origin}/morning-mail`,
  ];
  return {
    subject: `${longDate(input.today)}: ${countsInWords(rows)}`,
    text: `${parts.filter((part) => part !== '').join('\n\n')}\n`,
    isNew,
  };
}

function rowsOf({ clients, reasons, lastAt, today }: MorningInput): Row[] {
  const byClient = new Map<string, MorningReason[]>();
  for (const reason of reasons)
    byClient.set(reason.clientId, [...(byClient.get(reason.clientId) ?? []), reason]);
  return clients
    .flatMap(({ id, name }): Row[] => {
      const open = ofRow(byClient.get(id) ?? []);
      const { tier, points, lead } = rowOf(open);
      const first = open[lead];
      if (!first) return [];
      return [
        {
          name,
          tier,
          points,
          waitingSince: open.map((reason) => reason.raisedAt).sort()[0] ?? first.raisedAt,
          kinds: [...new Set([first, ...open].map((reason) => reason.kind))],
          isNew: open.some((reason) => reason.newAt > lastAt),
          // A plan that ends on Friday has stood here since it was raised, not since Friday.
          since: first.since > today ? first.raisedAt.slice(0, 10) : first.since,
        },
      ];
    })
    .sort(compareRows);
}

function group(tier: Tier, rows: readonly Row[], today: string): string {
  const inTier = rows.filter((row) => row.tier === tier);
  if (inTier.length === 0) return '';
  const lines = inTier.map(({ name, kinds, isNew, since }) => {
    const words = kinds.map((kind) => KIND_WORDS[kind]).join('; ');
    const when = isNew ? 'new' : `since ${datedDay(since, today)}`;
    return `- ${name}: ${words} (${when})`;
  });
  return `${TIER_TITLE[tier]} (${inTier.length})\n${lines.join('\n')}`;
}

function questionWords({ questions, today, origin }: MorningInput): string {
  const [oldest] = questions;
  if (!oldest) return '';
  const danger = questions.filter((question) => question.danger).length;
  const urgent = danger === 0 ? '' : ` ${capital(countWords(danger))} with words of a danger sign.`;
  const waits =
    questions.length === 1 ? 'One question waits' : `${capital(countWords(questions.length))} questions wait`;
  return `${waits}, the oldest since ${datedDay(oldest.askedOn, today)}.${urgent} ${origin}/replies`;
}

function nightWords({ night, today }: MorningInput): string {
  if (!night) return 'No night has run yet.';
  const goesOn = isDoneSoFar(night) ? 'goes on' : 'is not finished';
  const ended = night.endedAt ? `ended ${night.endedAt}` : goesOn;
  const later = laterWords(night.later);
  const checked =
    night.done === night.due
      ? `all ${night.due} clients checked`
      : `${night.done} of ${night.due} clients checked${night.endedAt ? '' : ' so far'}${later && `; ${later}`}`;
  const missed = night.missed.length === 0 ? '' : ` Not checked: ${night.missed.join(', ')}.`;
  return `The night of ${datedDay(night.localDate, today)} ${ended}, ${checked}.${missed}`;
}

function coverWords({ covered, today }: MorningInput): string {
  if (covered.length === 0) return '';
  const whom = covered.map(({ name, to }) => `${name}, until ${datedDay(to, today)}`);
  return `With the clients whom you cover for: ${whom.join('; ')}.`;
}

function countsInWords(rows: readonly Row[]): string {
  const count = (tier: Tier) => rows.filter((row) => row.tier === tier).length;
  const said = [
    [count('now'), 'to answer now'],
    [count('today'), 'today'],
    [count('this-week'), 'this week'],
    [count('good-news'), 'with good news'],
  ] as const;
  const words = said.filter(([many]) => many > 0).map(([many, what]) => `${countWords(many)} ${what}`);
  return words.length === 0 ? 'nothing to answer' : words.join(', ');
}

function people(count: number): string {
  return count === 1 ? 'your 1 client' : `your ${count} clients`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
