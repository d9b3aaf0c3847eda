import { randomUUID } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { findBoardHead } from '#lib/db/board.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { listGoalStates } from '#lib/db/plan-undo.ts';
import { lockPlanVersion } from '#lib/db/plans.ts';
import { listPlacementsFrom } from '#lib/db/step-records.ts';
import { AppError } from '#lib/errors.ts';
import type { BoardAct } from '#lib/schemas/board.ts';
import type { FilmAsk } from '#lib/schemas/clip.ts';
import type { LookAct } from '#lib/schemas/looking.ts';
import type { PlanInput } from '#lib/schemas/plan.ts';
import type { ApprovalContext } from '#lib/schemas/prepared-act.ts';
import { actOnClient } from '../act-on-client.ts';
import type { ActDone } from '../act-on-reason.ts';
import { answerQuestionIn } from '../answer-question.ts';
import { assertMember } from '../assert-member.ts';
import { askFilmIn } from '../film/ask-film-in.ts';
import { doLook } from '../looking/do-look.ts';
import { planConflict, savePlanIn } from '../save-plan.ts';

export type Prepared =
  | { act: 'answer'; clientId: string; body: Extract<BoardAct, { act: 'answer' }> }
  | { act: 'step'; clientId: string; body: Extract<BoardAct, { act: 'take' }> }
  | { act: 'plan'; clientId: string; body: PlanInput }
  | { act: 'film'; clientId: string; body: LookAct }
  | { act: 'ask-film'; clientId: string; body: FilmAsk };
export type Performed = ActDone & {
  /** Of a plan. */
  version?: number;
  planUndo?: NonNullable<ApprovalContext['planUndo']>;
};

/** Does an answer, a step, a plan or a look at a film inside the caller's transaction, whoever prepared it. */
export async function performAct(
  tx: TeamPg,
  actor: Actor,
  prepared: Prepared,
  now: Date,
): Promise<Performed> {
  if (prepared.act === 'answer') return answerQuestionIn(tx, actor, prepared.body, now);
  const acting = { ...actor, memberId: assertMember(actor) };
  if (prepared.act === 'ask-film')
    return askFilmIn(tx, acting, { clientId: prepared.clientId, film: prepared.body }, now);
  if (prepared.act === 'film') return doLook(tx, acting, prepared.body, now);
  if (prepared.act === 'plan') return savePlanVersion(tx, acting, prepared, now);
  const { today, zone } = await findBoardHead(tx, acting.memberId, now);
  const actId = randomUUID();
  const done = await actOnClient(tx, prepared.body, { actor: acting, actId, today, zone, now });
  return { actId, ...done };
}

async function savePlanVersion(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { clientId, body: plan }: Extract<Prepared, { act: 'plan' }>,
  now: Date,
): Promise<Performed> {
  const newest = await lockPlanVersion(tx, clientId);
  if (newest === undefined) throw new AppError('not-found', 'This client is not here.');
  if (newest !== plan.baseVersion) throw planConflict(newest, plan.baseVersion);
  const placements = await listPlacementsFrom(tx, clientId, plan.from);
  const goals = await listGoalStates(tx, clientId);
  const { version } = await savePlanIn(tx, { actor, clientId, now }, { plan, version: newest + 1 });
  const line = `Plan version ${version} is saved.`;
  return {
    actId: randomUUID(),
    line,
    folds: false,
    version,
    planUndo: { version, placements, goals },
  };
}
