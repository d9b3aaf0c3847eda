import type { Actor } from '#lib/auth/actor.ts';
import { rowOf } from '#lib/checks/urgency.ts';
import { insertStepTaken, insertVerdict, listCheckInDates } from '#lib/db/act-records.ts';
import {
  type ActReason,
  findActClient,
  insertActEvents,
  lockOpenReasons,
  type StepRecords,
  writeHolds,
} from '#lib/db/acts.ts';
import { insertAudit } from '#lib/db/audit.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { SIDES, type Side } from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';
import type { ReasonAct } from '#lib/schemas/board.ts';
import { nextCheckIn } from '#lib/views/next-check-in.ts';
import { lineOfAct } from './act-line.ts';
import { assertMayAct } from './assert-may-act.ts';
import { backFromClient, type Hold, holdAfter, holdOf, reviewDate } from './hold-after-act.ts';
import { stepDraftFor } from './step-draft-for.ts';
import { takeStep } from './take-step.ts';

const AUDITED = {
  take: 'step-taken',
  'put-aside': 'reasons-put-aside',
  done: 'reasons-closed',
  known: 'reasons-known',
  'not-known': 'reasons-known-no-more',
} as const;

/** Who acts, under which id, on which day of theirs. */
export type Acting = {
  actor: Actor & { memberId: string };
  actId: string;
  today: string;
  zone: string;
  now: Date;
};
type Doing = Acting & { tx: TeamPg; input: ReasonAct; reasons: ActReason[]; lead: ActReason };

/**
 * One act on one client's row, inside the caller's transaction: reasons, events, the step or the verdict and the
 * audit line. Good news that a danger sign hides is not acted on with it.
 */
export async function actOnClient(
  tx: TeamPg,
  input: ReasonAct,
  acting: Acting,
): Promise<{ line: string; folds: boolean }> {
  const open = await openReasons(tx, input);
  const named = 'reasonId' in input ? input.reasonId : undefined;
  const reasons = named ? open.filter((reason) => reason.id === named) : open;
  const lead = reasons[rowOf(reasons).lead];
  if (!lead)
    throw new AppError('not-found', 'This reason is not open, or not in your team. Read the board again.');
  assertMayAct(input, reasons, acting);
  const doing: Doing = { ...acting, tx, input, reasons, lead };
  const hold = await toHold(doing);
  const after = reasons.map((reason) => holdAfter(holdOf(reason), hold));
  await writeHolds(tx, after, acting.now);
  const taken = await takeDraft(doing);
  const made = { ...(await writeRecords(doing, hold)), ...(taken && { taken }) };
  const { actId, actor, now } = acting;
  const events = reasons.map((reason, index) => ({
    reasonId: reason.id,
    what: input.act,
    level: reason.level,
    body: {
      actId,
      clientId: input.clientId,
      act: input.act,
      words: wordsOf(input),
      before: holdOf(reason),
      after: after[index] ?? null,
      ...(reason === lead ? made : {}),
      ...(actor.preparedById && { preparedById: actor.preparedById }),
    },
  }));
  await insertActEvents(tx, events, { memberId: actor.memberId, at: now });
  await insertAudit(tx, actor, {
    action: AUDITED[input.act],
    clientId: input.clientId,
    objectId: lead.id,
    fields: [],
  });
  const line = lineOfAct({ input, hold, step: lead.step.text, today: acting.today });
  return { line, folds: reasons.length === open.length && input.act !== 'not-known' };
}

function wordsOf(input: ReasonAct): string {
  return input.act === 'not-known' ? '' : input.words;
}

async function openReasons(tx: TeamPg, input: ReasonAct): Promise<ActReason[]> {
  if (!(await findActClient(tx, input.clientId)))
    throw new AppError('not-found', 'This is not there, or not in your team.');
  const open = await lockOpenReasons(tx, input.clientId);
  if (open.length > 0) return open;
  throw new AppError('conflict', 'Nothing is open for this client any more. Read the board again.');
}

/** Does what the draft of the step says, where the coach takes it with one. */
async function takeDraft({ tx, input, lead, actor, now }: Doing): Promise<StepRecords | undefined> {
  if (input.act !== 'take' || !input.draft) return undefined;
  const { clientId, draft: shown } = input;
  if (shown.reasonId !== lead.id)
    throw new AppError('conflict', 'Another reason leads this row by now. Open the draft again.');
  const client = await findActClient(tx, clientId);
  const today = localDateOf(now, client?.zone ?? 'UTC');
  const found = await stepDraftFor(tx, { clientId, reason: lead, today });
  if (!found)
    throw new AppError('conflict', 'There is nothing to draft for this step any more. Open it again.');
  const { planVersion, words } = shown;
  return takeStep(tx, { actor, clientId, today, draft: found.draft, planVersion, words, now });
}

async function toHold({ tx, input, reasons, today, now }: Doing): Promise<Hold> {
  if (input.act === 'take') return { act: 'take', until: backFromClient(reasons, today) };
  if (input.act === 'done') return { act: 'done', at: now.toISOString() };
  if (input.act === 'known') return { act: 'known', on: today, words: input.words };
  if (input.act === 'not-known') return { act: 'not-known' };
  if (input.until === 'change') return { act: 'put-aside', until: null };
  if (input.until === 'date') return { act: 'put-aside', until: laterThan(today, input.date) };
  const dates = await listCheckInDates(tx, input.clientId, addDays(today, -84));
  return { act: 'put-aside', until: nextCheckIn(dates, today) };
}

function laterThan(today: string, date: string | undefined): string {
  if (date !== undefined && date > today && date <= addDays(today, 366)) return date;
  const message = `must be a date after today (${today}) and within a year`;
  throw new AppError('invalid', `date: ${message}`, { fields: { date: message } });
}

async function writeRecords(
  { tx, input, lead, today, actor, now }: Doing,
  hold: Hold,
): Promise<{ stepId?: string; verdictId?: string }> {
  const by = { memberId: actor.memberId, at: now };
  if (input.act === 'take' && hold.act === 'take') {
    const step = {
      clientId: input.clientId,
      reasonId: lead.id,
      kind: lead.step.kind,
      ladderId: lead.subject.ladderId ?? null,
      side: sideOf(lead),
      words: input.words || lead.step.text,
      takenOn: today,
      reviewOn: reviewDate(lead.kind, today),
    };
    return { stepId: await insertStepTaken(tx, step, by) };
  }
  if (input.act !== 'done' || input.rightToTell === undefined) return {};
  const verdict = { reasonId: lead.id, rightToTell: input.rightToTell, text: input.words };
  return { verdictId: await insertVerdict(tx, verdict, by) };
}

function sideOf(reason: ActReason): Side | null {
  return SIDES.find((side) => side === reason.subject.side) ?? null;
}
