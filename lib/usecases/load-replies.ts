import type { Actor } from '#lib/auth/actor.ts';
import { hasDangerWords } from '#lib/checks/danger-words.ts';
import { buildView } from '#lib/checks/view.ts';
import { findBoardHead } from '#lib/db/board.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { type EarlierAnswer, findEarlierAnswers, listAnswersLike } from '#lib/db/earlier-answers.ts';
import { findAnsweringHours, HISTORY_DAYS, loadHistories } from '#lib/db/histories.ts';
import { type KeptReply, listKeptReplies } from '#lib/db/kept-replies.ts';
import { listLimits } from '#lib/db/limits.ts';
import { listReasons } from '#lib/db/reasons.ts';
import { listSettings } from '#lib/db/settings.ts';
import { listSeenSince, listWaitingQuestions, type WaitingQuestion } from '#lib/db/waiting-questions.ts';
import type { AnsweringHours } from '#lib/domain/history.ts';
import { addDays, localDateOf } from '#lib/domain/local-date.ts';
import type { RepliesFilter } from '#lib/schemas/reply.ts';
import { earlierReply } from '#lib/views/replies/earlier-reply.ts';
import type { EarlierReply, WaitingReply } from '#lib/views/replies/reply-types.ts';
import { inAnsweringOrder, waitingReply } from '#lib/views/replies/waiting-reply.ts';
import { FOUND_AT_MOST } from './find-answers.ts';

/** How many questions stand on the page at once; the others follow as these are answered. Our own choice. */
const SHOWN = 40;
const LIKE_EACH = 3;

export type Replies = {
  waiting: WaitingReply[];
  /** Questions beyond those on the page. */
  more: number;
  answering: AnsweringHours | undefined;
  zone: string;
  kept: KeptReply[];
  /** Of a search; null: none was asked for. */
  found: EarlierReply[] | null;
};

/** Everything the page of replies shows: what waits with the client beside it, kept replies, what a search found. */
export function loadReplies(actor: Actor, { coach, find }: RepliesFilter, now: Date): Promise<Replies> {
  return withTeamPg(actor.scope, async (tx) => {
    const { zone, today } = await findBoardHead(tx, actor.memberId, now);
    const all = (await listWaitingQuestions(tx)).filter(
      (question) => coach === undefined || question.coachId === actor.memberId,
    );
    const shown = inAnsweringOrder(
      all.map((question) => ({ ...question, danger: hasDangerWords(question.text) })),
    ).slice(0, SHOWN);
    const said = (answer: EarlierAnswer) => earlierReply(answer, { zone, today });
    return {
      waiting: await withContext(tx, shown, { zone, now, said }),
      more: all.length - shown.length,
      answering: await findAnsweringHours(tx),
      zone,
      kept: (await listKeptReplies(tx)).filter((reply) => reply.retiredAt === null),
      found: find === undefined ? null : (await findEarlierAnswers(tx, find, FOUND_AT_MOST)).map(said),
    };
  });
}

type About = { zone: string; now: Date; said: (answer: EarlierAnswer) => EarlierReply };

async function withContext(tx: TeamPg, shown: WaitingQuestion[], about: About): Promise<WaitingReply[]> {
  const [first] = shown;
  if (!first) return [];
  const { now, zone } = about;
  const clientIds = [...new Set(shown.map((question) => question.clientId))];
  const settings = await listSettings(tx, clientIds);
  const from = addDays(localDateOf(now, 'UTC'), -HISTORY_DAYS);
  const histories = await loadHistories(tx, clientIds, { from, limits: settings.team.limits });
  const reasons = await listReasons(tx, clientIds);
  const [oldest = first.askedAt] = shown.map((question) => question.askedAt).sort();
  const seen = await listSeenSince(tx, clientIds, oldest);
  const like = await listAnswersLike(
    tx,
    shown.map((question) => question.id),
    LIKE_EACH,
  );
  const ruledOut = new Map<string, Awaited<ReturnType<typeof listLimits>>>();
  for (const id of clientIds) ruledOut.set(id, await listLimits(tx, id));
  return shown.flatMap((question) => {
    const { clientId } = question;
    const history = histories.get(clientId);
    if (!history) return [];
    const { limits } = settings.of(clientId);
    const date = localDateOf(now, history.client.zone);
    return [
      waitingReply({
        question,
        view: buildView(history, { date, instant: now.toISOString() }, limits),
        limits,
        reasons: (reasons.get(clientId) ?? []).filter((reason) => reason.closedAt === null),
        ruledOut: ruledOut.get(clientId) ?? [],
        seen: seen.get(clientId) ?? [],
        earlier: (like.get(question.id) ?? []).map(about.said),
        zone,
        now,
      }),
    ];
  });
}
