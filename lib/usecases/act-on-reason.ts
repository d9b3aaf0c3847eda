import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { rowOf, URGENT_KINDS } from '#lib/checks/urgency.ts';
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
import { findBoardHead } from '#lib/db/board.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import { SIDES, type Side } from '#lib/domain/vocabulary.ts';
import { AppError } from '#lib/errors.ts';
import type { ReasonAct } from '#lib/schemas/board.ts';
import { nextCheckIn } from '#lib/views/next-check-in.ts';
import { datedDay } from '#lib/views/say-date.ts';
import { assertMember } from './assert-member.ts';
import { backFromClient, type Hold, holdAfter, holdOf, reviewDate } from './hold-after-act.ts';
import { stepDraftFor } from './step-draft-for.ts';
import { takeStep } from './take-step.ts';

export type ActDone = {
  actId: string;
  /** One line for the folded row. */
  line: string;
  /** Whether the row leaves the board. */
  folds: boolean;
};

const AUDITED = { take: 'step-taken', 'put-aside': 'reasons-put-aside', done: 'reasons-closed' } as const;

type Doing = {
  tx: TeamPg;
  input: ReasonAct;
  reasons: ActReason[];
  lead: ActReason;
  today: string;
  now: Date;
};

/**
 * Take, put aside or done on a client's row: on all its open reasons, or on the one that is named. Reasons,
 * events, the step or the verdict and the audit line are written in one transaction.
 */
export async function actOnReason(actor: Actor, input: ReasonAct, now: Date): Promise<ActDone> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const open = await openReasons(tx, input);
    const reasons = input.reasonId ? open.filter((reason) => reason.id === input.reasonId) : open;
    const lead = reasons[rowOf(reasons).lead];
    if (!lead)
      throw new AppError('not-found', 'This reason is not open, or not in your team. Read the board again.');
    assertWords(input, reasons);
    const { today } = await findBoardHead(tx, memberId, now);
    const doing: Doing = { tx, input, reasons, lead, today, now };
    const hold = await toHold(doing);
    const after = reasons.map((reason) => holdAfter(holdOf(reason), hold));
    await writeHolds(tx, after, now);
    const taken = await takeDraft(doing, { ...actor, memberId });
    const made = { ...(await writeRecords(doing, hold, memberId)), ...(taken && { taken }) };
    const actId = randomUUID();
    const events = reasons.map((reason, index) => ({
      reasonId: reason.id,
      what: input.act,
      level: reason.level,
      body: {
        actId,
        clientId: input.clientId,
        act: input.act,
        words: input.words,
        before: holdOf(reason),
        after: after[index] ?? null,
        ...(reason === lead ? made : {}),
      },
    }));
    await insertActEvents(tx, events, { memberId, at: now });
    await insertAudit(tx, actor, {
      action: AUDITED[input.act],
      clientId: input.clientId,
      objectId: lead.id,
      fields: [],
    });
    return { actId, line: lineOf(doing, hold), folds: reasons.length === open.length };
  });
}

async function openReasons(tx: TeamPg, input: ReasonAct): Promise<ActReason[]> {
  if (!(await findActClient(tx, input.clientId)))
    throw new AppError('not-found', 'This is not there, or not in your team.');
  const open = await lockOpenReasons(tx, input.clientId);
  if (open.length === 0) {
    throw new AppError('conflict', 'Nothing is open for this client any more. Read the board again.');
  }
  return open;
}

function assertWords(input: ReasonAct, reasons: ActReason[]): void {
  if (input.act === 'take' || input.words !== '') return;
  if (!reasons.some((reason) => URGENT_KINDS.includes(reason.kind))) return;
  const verb = input.act === 'done' ? 'closed' : 'put aside';
  const message = `a danger sign or pain of 6 or more cannot be ${verb} without words: say why, for the record`;
  throw new AppError('invalid', `words: ${message}`, { fields: { words: message } });
}

/** Does what the draft of the step says, where the coach takes it with one. */
async function takeDraft(
  { tx, input, lead, now }: Doing,
  actor: Actor & { memberId: string },
): Promise<StepRecords | undefined> {
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
  { tx, input, lead, today, now }: Doing,
  hold: Hold,
  memberId: string,
): Promise<{ stepId?: string; verdictId?: string }> {
  const by = { memberId, at: now };
  if (hold.act === 'take') {
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

function lineOf({ input, lead, today }: Doing, hold: Hold): string {
  const words = input.words === '' ? '' : `: “${input.words}”`;
  if (hold.act === 'take') {
    const done = input.act === 'take' && input.draft ? 'Taken' : 'Step';
    return `With the client until ${datedDay(hold.until, today)}. ${done}: ${input.words || lead.step.text}`;
  }
  if (hold.act === 'put-aside') {
    return `Put aside until ${hold.until ? datedDay(hold.until, today) : 'it changes'}${words}`;
  }
  return `Done${verdictWords(input)}${words}`;
}

function verdictWords(input: ReasonAct): string {
  if (input.act !== 'done' || input.rightToTell === undefined) return '';
  return input.rightToTell ? ', right to tell me' : ', not needed';
}
