import { findDangerWords } from '#lib/checks/danger-words.ts';
import { type QuestionHours, questionHours, wholeHours } from '#lib/checks/question-hours.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { isInForce } from '#lib/planning/limit-on-item.ts';
import { ofRow } from '../board-reasons.ts';
import { reasonsView } from '../client-reasons.ts';
import { timeline } from '../client-timeline.ts';
import { dangersNow } from '../dangers-now.ts';
import { limitInWords, untilInWords } from '../limit-lines.ts';
import { clockTime } from '../local-time.ts';
import { datedDay, exactDate, saidDate } from '../say-date.ts';
import { plainSentence } from '../sentence.ts';
import { drillsAsked } from './drills-asked.ts';
import type { AskedPart, EarlierReply, ReplyContext, WaitingReply } from './reply-types.ts';

export type WaitingInput = {
  question: { id: string; text: string; askedAt: string; stills: string[] };
  /** The client as of now. */
  view: ClientView;
  limits: Limits;
  reasons: Parameters<typeof reasonsView>[0];
  /** All limits the client ever had. */
  ruledOut: readonly HistoryLimit[];
  seen: Parameters<typeof timeline>[0]['seen'];
  earlier: readonly EarlierReply[];
  /** The zone of the coach who reads. */
  zone: string;
  now: Date;
};

/** One waiting question with the hours that the check counts and the client beside it. */
export function waitingReply(input: WaitingInput): WaitingReply {
  const { question, view, now, zone } = input;
  const { client, answering } = view.history;
  const waited = questionHours(question, now.toISOString(), { answering, limits: input.limits });
  const askedOn = localDateOf(new Date(question.askedAt), zone);
  const today = localDateOf(now, zone);
  const time = clockTime(question.askedAt, zone);
  return {
    id: question.id,
    clientId: client.id,
    name: client.name,
    asked: partsOf(question.text),
    danger: waited.danger,
    hours: wholeHours(waited.hours),
    waited: hoursInWords(waited, answering !== undefined),
    since: `${saidDate(askedOn, today)} ${time}`,
    sinceExact: `${exactDate(askedOn)}, ${time} your time`,
    stills: question.stills,
    seen: seenInWords(input, today),
    context: contextOf(input),
    earlier: [...input.earlier],
  };
}

function hoursInWords({ hours, danger, capped }: QuestionHours, counted: boolean): string {
  const whole = wholeHours(hours);
  const time = whole === 0 ? 'under 1 h' : `${whole} h${capped ? ' or more' : ''}`;
  return danger || !counted ? `${time}, round the clock` : `${time} in answering hours`;
}

function partsOf(text: string): AskedPart[] {
  const parts: AskedPart[] = [];
  let from = 0;
  for (const { start, end } of findDangerWords(text)) {
    parts.push(
      { at: from, text: text.slice(from, start), danger: false },
      { at: start, text: text.slice(start, end), danger: true },
    );
    from = end;
  }
  parts.push({ at: from, text: text.slice(from), danger: false });
  return parts.filter((part) => part.text !== '');
}

/** The last look of a coach since the question; empty when nobody has looked. */
function seenInWords({ question, seen, zone }: WaitingInput, today: string): string {
  const [last] = seen.filter((mark) => mark.at >= question.askedAt).sort((a, b) => (a.at < b.at ? 1 : -1));
  if (!last) return '';
  return `seen by ${last.by}, ${saidDate(localDateOf(new Date(last.at), zone), today)} ${clockTime(last.at, zone)}`;
}

function contextOf(input: WaitingInput): ReplyContext {
  const { view, reasons, ruledOut } = input;
  const { client, checkIns } = view.history;
  const today = localDateOf(input.now, client.zone);
  const dangers = dangersNow(view);
  const shown = ofRow(reasons).filter(
    ({ kind, tier }) =>
      tier !== null && kind !== 'question-waiting' && !(dangers.length > 0 && kind === 'danger-sign'),
  );
  const last = [...checkIns].sort((a, b) => (a.sentAt < b.sentAt ? 1 : -1)).slice(0, 1);
  const [entry] = timeline({ checkIns: last, rungs: view.rungs, seen: [], today });
  return {
    dangers,
    reasons: reasonsView(shown, today).lines.map(({ id, kind, sentence }) => ({
      id,
      kind,
      sentence: plainSentence(sentence),
    })),
    drills: drillsAsked(input.question.text, view.planOn(today)?.items ?? [], view.rungs),
    limits: ruledOut
      .filter((limit) => isInForce(limit, today))
      .map((limit) => `${limitInWords(limit)} ${untilInWords(limit, today)}`),
    lastCheckIn: last[0]
      ? `${datedDay(last[0].date, today)}: ${entry?.about ?? ''}. ${entry?.facts ?? ''}`.trim()
      : 'No check-in yet.',
    words: last[0]?.words ?? '',
  };
}

/** Questions with the words of a danger sign first, then by when they were asked. */
export function inAnsweringOrder<Reply extends { danger: boolean; askedAt: string; id: string }>(
  replies: readonly Reply[],
): Reply[] {
  return [...replies].sort(
    (a, b) =>
      Number(b.danger) - Number(a.danger) || a.askedAt.localeCompare(b.askedAt) || a.id.localeCompare(b.id),
  );
}
