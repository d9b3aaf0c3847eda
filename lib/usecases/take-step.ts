import type { Actor } from '#lib/auth/actor.ts';
import type { StepRecords } from '#lib/db/acts.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { listOpenGoals } from '#lib/db/goals.ts';
import { insertLimit } from '#lib/db/limits.ts';
import { listPlans, lockPlanVersion, type PlanRow } from '#lib/db/plans.ts';
import {
  insertCoachWord,
  insertFilmRequest,
  listOpenGoalIds,
  listPlacementsFrom,
} from '#lib/db/step-records.ts';
import { fillSwaps } from '#lib/db/swaps.ts';
import type { HistoryPlanItem } from '#lib/domain/history.ts';
import { AppError } from '#lib/errors.ts';
import type { PlanStage, StepDraft } from '#lib/planning/steps/step-types.ts';
import type { PlanInput } from '#lib/schemas/plan.ts';
import { savePlanIn } from './save-plan.ts';
import { tellClient } from './tell-client.ts';

type Taking = {
  actor: Actor & { memberId: string };
  clientId: string;
  today: string;
  draft: StepDraft;
  /** The version the coach saw the draft of. */
  planVersion: number;
  /** To the client, as the coach left them; empty: nothing is said. */
  words: string;
  now: Date;
};

/**
 * Does what a draft says, in the transaction of the act: versions of the plan with the placements they mean, a film
 * asked for, a limit, words to the client. Refuses when the plan was changed since the draft was shown.
 */
export async function takeStep(tx: TeamPg, taking: Taking): Promise<StepRecords> {
  const { actor, clientId, today, draft, now } = taking;
  const newest = await lockPlanVersion(tx, clientId);
  if (newest !== taking.planVersion)
    throw new AppError(
      'conflict',
      'The plan was changed since this draft was made. Nothing was saved: open the draft again.',
    );
  const by = { memberId: actor.memberId, at: now };
  const placementsBefore = draft.stages.length > 0 ? await listPlacementsFrom(tx, clientId, today) : [];
  const { planVersions, goalIds } = await savePlans(tx, taking, newest);
  return {
    planVersions,
    placementsBefore,
    goalIds,
    filmId: draft.film && (await insertFilmRequest(tx, { ...draft.film, clientId }, by)),
    limitId: draft.limit && (await setLimit(tx, taking, draft.limit)),
    wordId: taking.words === '' ? null : await say(tx, taking, by),
  };
}

async function say(
  tx: TeamPg,
  { actor, clientId, words, now }: Taking,
  by: { memberId: string; at: Date },
): Promise<string> {
  const id = await insertCoachWord(tx, { clientId, text: words }, by);
  await tellClient(tx, { clientId, what: 'words', id, by: actor.name }, now);
  return id;
}

async function setLimit(
  tx: TeamPg,
  { actor, clientId, today, now }: Taking,
  { region, side }: NonNullable<StepDraft['limit']>,
): Promise<string> {
  await fillSwaps(tx);
  const rule = { rule: 'none' as const, tissue: null, region, side, percent: null };
  const words = 'until a clinician has spoken';
  return insertLimit(tx, { ...rule, from: today, until: null, who: actor.name, words, clientId, now });
}

async function savePlans(
  tx: TeamPg,
  taking: Taking,
  newest: number,
): Promise<Pick<StepRecords, 'planVersions' | 'goalIds'>> {
  const { actor, clientId, draft, now } = taking;
  const [base] = draft.stages.length > 0 ? await listPlans(tx, clientId) : [];
  if (!base) return { planVersions: [], goalIds: [] };
  const goals = await listOpenGoals(tx, clientId);
  const kept = goals.filter(({ skill }) => !draft.dropSkills.includes(skill));
  const open = await listOpenGoalIds(tx, clientId);
  const planVersions: number[] = [];
  for (const stage of draft.stages) {
    const version = newest + planVersions.length + 1;
    const plan = {
      ...planInput(base, stage, version - 1),
      ...(kept.length < goals.length && {
        goals: kept.map(({ skillId, wantedBy }) => ({ skillId, wantedBy })),
      }),
    };
    await savePlanIn(tx, { actor, clientId, now }, { plan, version });
    planVersions.push(version);
  }
  const still = await listOpenGoalIds(tx, clientId);
  return { planVersions, goalIds: open.filter((id) => !still.includes(id)) };
}

/** The newest version with the lines of a stage, from its day on; weeks that are over by then are left behind. */
function planInput(base: PlanRow, stage: PlanStage, baseVersion: number): PlanInput {
  const { until, sessionsPerWeek, notes, sessions, acceptedWeekAu } = base;
  const ahead = (weeks: string[]) => weeks.filter((week) => week >= stage.from);
  return {
    baseVersion,
    from: stage.from,
    until: until !== null && until < stage.from ? null : until,
    sessionsPerWeek,
    notes,
    sessions: sessions as PlanInput['sessions'],
    items: stage.items.map(lineInput),
    easyWeeks: ahead(base.easyWeeks),
    testWeeks: ahead(base.testWeeks),
    noKitWeeks: ahead(base.noKitWeeks),
    acceptedWeekAu,
    why: stage.why,
    draftId: null,
  };
}

function lineInput(item: HistoryPlanItem): PlanInput['items'][number] {
  return {
    session: item.session as PlanInput['items'][number]['session'],
    rungId: item.rungId,
    side: item.side,
    sets: item.sets,
    target: item.target,
    minutes: item.minutes,
    timesPerWeek: item.timesPerWeek,
    support: item.support ?? null,
    stopRule: item.stopRule ?? '',
    notTwoDaysRunning: item.notTwoDaysRunning ?? false,
    pairedWith: item.pairedWith ?? null,
    noKitRungId: item.noKitRungId ?? null,
  };
}
