import type { Actor } from '#lib/auth/actor.ts';
import { listOpenReasons } from '#lib/db/acts.ts';
import { type ApprovalRow, listApprovals } from '#lib/db/approvals.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { findClipToLook, findSetNumber } from '#lib/db/looking.ts';
import { findRungs, listPlans } from '#lib/db/plans.ts';
import { findQuestionText } from '#lib/db/questions.ts';
import { findTeamMember } from '#lib/db/team-members.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { planDifference } from '#lib/views/plan-difference.ts';
import { planItemInWords } from '#lib/views/plan-words.ts';
import { exactDate, saidDate } from '#lib/views/say-date.ts';
import { plainSentence } from '#lib/views/sentence.ts';
import { preparedLook } from '../looking/prepared-look.ts';
import { planLinesBySide } from '../plan-lines-by-side.ts';
import { stepDraftFor } from '../step-draft-for.ts';
import type { Prepared } from './perform-act.ts';
import { preparedFrom } from './prepared-from.ts';

/** A prepared act as it is shown: what would be done, and what a coach may change in it. */
export type ApprovalShown = {
  id: string;
  clientId: string;
  client: string;
  act: string;
  /** "An answer", "A step", "Plan version 4". */
  title: string;
  /** What it is about: the question, the reason. */
  about: string | null;
  /** What would be done, a line each. */
  does: string[];
  /** Words that go to the client; null: none can be written here. */
  words: string | null;
  body: unknown;
  preparedBy: string;
  mine: boolean;
  preparedAt: string;
  state: ApprovalRow['state'];
  decidedBy: string | null;
  /** Why it was sent back or closed. */
  said: string;
};

const SHOWN_DAYS = 14;

/**
 * What waits for approval, the oldest first, of the team or of one client; and what the asking member prepared that came
 * back or was overtaken in the last 14 days.
 */
export function loadApprovals(
  actor: Actor,
  of: { clientId?: string },
  now: Date,
): Promise<{ waiting: ApprovalShown[]; decided: ApprovalShown[] }> {
  return withTeamPg(actor.scope, async (tx) => {
    const memberId = actor.memberId ?? '';
    const zone = (await findTeamMember(tx, memberId, now))?.zone ?? 'UTC';
    const shown = (row: ApprovalRow) => show(tx, row, { memberId, zone, now });
    const waiting = await listApprovals(tx, { ...of, state: 'waiting' });
    const since = new Date(now.getTime() - SHOWN_DAYS * 86_400_000);
    const own = await listApprovals(tx, { ...of, preparedById: memberId, since });
    const back = own.filter(({ state }) => state === 'sent-back' || state === 'overtaken');
    const all: ApprovalShown[] = [];
    for (const row of [...waiting, ...back]) all.push(await shown(row));
    return {
      waiting: all.filter(({ state }) => state === 'waiting'),
      decided: all.filter(({ state }) => state !== 'waiting').reverse(),
    };
  });
}

type Seen = { memberId: string; zone: string; now: Date };

async function show(tx: TeamPg, row: ApprovalRow, { memberId, zone, now }: Seen): Promise<ApprovalShown> {
  const { id, clientId, client, act, body, preparedBy, state, decidedBy } = row;
  const facts = await factsOf(tx, row, now);
  return {
    ...facts,
    id,
    clientId,
    client,
    act,
    body,
    preparedBy,
    mine: row.preparedById === memberId,
    preparedAt: saidDate(localDateOf(row.preparedAt, zone), localDateOf(now, zone)),
    state,
    decidedBy,
    said: row.words,
  };
}

type Facts = Pick<ApprovalShown, 'title' | 'about' | 'does' | 'words'>;

async function factsOf(tx: TeamPg, row: ApprovalRow, now: Date): Promise<Facts> {
  const prepared = readable(row);
  if (!prepared) return { title: 'An act', about: null, does: ['It cannot be read any more.'], words: null };
  if (prepared.act === 'answer') {
    const about = (await findQuestionText(tx, prepared.body.questionId)) ?? null;
    return { title: 'An answer', about, does: [], words: prepared.body.text };
  }
  if (prepared.act === 'ask-film') return askFilmFacts(tx, prepared);
  if (prepared.act === 'film') return filmFacts(tx, prepared);
  return prepared.act === 'step' ? stepFacts(tx, prepared, now) : planFacts(tx, prepared);
}

function readable({ act, clientId, body }: ApprovalRow): Prepared | undefined {
  try {
    return preparedFrom({ act, clientId, body });
  } catch {
    return undefined;
  }
}

async function askFilmFacts(tx: TeamPg, { body }: Extract<Prepared, { act: 'ask-film' }>): Promise<Facts> {
  const rung =
    (await findRungs(tx, [body.rungId])).get(body.rungId)?.name ?? 'a rung that is no longer there';
  const side = body.side === 'both' ? '' : `, ${body.side}`;
  const by = body.byDate ? `, by ${exactDate(body.byDate)}` : '';
  const does = [`${rung}${side}, ${body.angle}${by}.`];
  return { title: 'A film asked for', about: body.words || null, does, words: null };
}

async function filmFacts(tx: TeamPg, { body }: Extract<Prepared, { act: 'film' }>): Promise<Facts> {
  const clip = await findClipToLook(tx, body.clipId);
  if (!clip) return preparedLook(body, undefined);
  const told = body.act === 'verdict' && body.set.told ? body.set : undefined;
  const set = told ? await findSetNumber(tx, { ...told, rungId: clip.rungId }) : 0;
  return preparedLook(body, { ...clip, set });
}

async function stepFacts(
  tx: TeamPg,
  { clientId, body }: Extract<Prepared, { act: 'step' }>,
  now: Date,
): Promise<Facts> {
  const open = await listOpenReasons(tx, clientId);
  const wanted = body.draft?.reasonId ?? body.reasonId;
  const reason = wanted ? open.find(({ id }) => id === wanted) : open[0];
  const today = now.toISOString().slice(0, 10);
  const found = body.draft && reason ? await stepDraftFor(tx, { clientId, reason, today }) : undefined;
  return {
    title: 'A step',
    about: reason ? plainSentence(reason.sentence) : null,
    does: found?.draft.does ?? [body.words || (reason?.step.text ?? 'The reason is not open any more.')],
    words: body.draft ? body.draft.words : null,
  };
}

async function planFacts(tx: TeamPg, { clientId, body }: Extract<Prepared, { act: 'plan' }>): Promise<Facts> {
  const before = (await listPlans(tx, clientId)).find(({ version }) => version === body.baseVersion);
  const ids = [...body.items, ...(before?.items ?? [])].map(({ rungId }) => rungId);
  const rungs = await findRungs(tx, ids);
  const items = planLinesBySide(body.items, rungs);
  const does = before
    ? planDifference(before, { ...body, items, skillsInFocus: before.skillsInFocus }, rungs)
    : items.map((item) => planItemInWords(item, rungs.get(item.rungId)));
  return {
    title: `Plan version ${body.baseVersion + 1}`,
    about: body.why || null,
    does: does.length > 0 ? does : ['The same drills and doses, with other words or dates.'],
    words: null,
  };
}
