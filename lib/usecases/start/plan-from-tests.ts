import type { Actor } from '#lib/auth/actor.ts';
import { insertAssessment } from '#lib/db/assessments.ts';
import { insertAudit } from '#lib/db/audit.ts';
import { type TeamPg, withTeamPg } from '#lib/db/client.ts';
import { listOpenGoals } from '#lib/db/goals.ts';
import { findTemplate } from '#lib/db/plan-templates.ts';
import { lockPlanVersion } from '#lib/db/plans.ts';
import { lockStartTests } from '#lib/db/start-tests.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { AppError } from '#lib/errors.ts';
import { asksOfAssessment } from '#lib/planning/gaps/asks-of-assessment.ts';
import { findGaps } from '#lib/planning/gaps/find-gaps.ts';
import { assessmentOfTests } from '#lib/planning/start/assessment-of-tests.ts';
import { FIRST_WEEK_DAYS, START_PLAN_DAYS } from '#lib/planning/start/start-numbers.ts';
import { type StartLine, type StartPlan, startPlan } from '#lib/planning/start/start-plan.ts';
import { assessmentSchema } from '#lib/schemas/assessment.ts';
import { type PlanInput, planSchema, planTemplateSchema } from '#lib/schemas/plan.ts';
import { planDraftSchema } from '#lib/schemas/plan-draft.ts';
import type { PlanOfTests } from '#lib/schemas/start-tests.ts';
import { gapDraft } from '#lib/views/gaps/gap-draft.ts';
import { startDraft } from '#lib/views/start/start-draft.ts';
import { assertMember } from '../assert-member.ts';
import { loadGapFacts } from '../gap-facts.ts';
import { savePlanIn } from '../save-plan.ts';
import { savePlanDraftIn } from '../save-plan-draft.ts';
import { placesNow, placingFacts, type ReadTests, readTests } from './start-facts.ts';

type Input = { clientId: string; testsId: string; asked: PlanOfTests };
type Facts = NonNullable<Awaited<ReturnType<typeof loadGapFacts>>>;
/** Where to go on: the draft of the first week, of the weeks after it; or the version that was saved. */
export type PlanOfTestsMade = { address: string; laterAddress?: string | undefined };

/**
 * A start plan of four weeks from a kept plan with the rungs on which the client was placed: opened as drafts in the plan
 * editor, or saved as two versions, the first week with fewer sets. Without a kept plan: the fewest drills as a draft.
 */
export function planFromTests(actor: Actor, input: Input, now: Date): Promise<PlanOfTestsMade> {
  const memberId = assertMember(actor);
  return withTeamPg(actor.scope, async (tx) => {
    const facts = await loadGapFacts(tx, input.clientId, now);
    const version = facts && (await lockPlanVersion(tx, input.clientId));
    const row = facts && (await lockStartTests(tx, input.clientId, input.testsId));
    if (!facts || version === undefined || !row || row.endedAt)
      throw new AppError('not-found', 'These start tests are not here.');
    const tests = readTests(row);
    if (input.asked.templateId === null)
      return fewestDrills(tx, { ...actor, memberId }, { facts, tests, input }, now);
    const kept = await findTemplate(tx, input.asked.templateId);
    if (!kept) throw new AppError('not-found', 'This kept plan is not here any more: choose another.');
    const { body } = planTemplateSchema.parse({ name: kept.name, body: kept.body });
    const plan = startPlan(body.items, planFacts(facts, tests));
    if (plan.lines.length === 0)
      throw new AppError(
        'invalid',
        `Nothing of “${kept.name}” fits: ${plan.leftOut.map(({ name, why }) => `${name} ${why}`).join('; ')}. Take the fewest drills instead.`,
      );
    const about = { name: kept.name, today: facts.today };
    if (input.asked.how === 'draft') return asDrafts(tx, actor, { input, plan, about }, now);
    const weeks = [
      { lines: plan.firstWeek, from: facts.today, why: `Start plan from “${kept.name}”, first week` },
      {
        lines: plan.lines,
        from: addDays(facts.today, FIRST_WEEK_DAYS),
        why: `Start plan from “${kept.name}”, from the second week on`,
      },
    ];
    const goals = await goalsWith(tx, input.clientId, tests);
    let at = version;
    for (const { lines, from, why } of weeks) {
      const made = planSchema.parse({
        ...body,
        sessions: body.sessions.filter(({ label }) => lines.some(({ session }) => session === label)),
        items: lines.map(itemOf),
        baseVersion: at,
        from,
        until: addDays(facts.today, START_PLAN_DAYS - 1),
        why,
        goals,
      } satisfies Partial<Record<keyof PlanInput, unknown>>);
      at += 1;
      await savePlanIn(
        tx,
        { actor: { ...actor, memberId }, clientId: input.clientId, now },
        { plan: made, version: at },
      );
    }
    return { address: `/clients/${input.clientId}/plan` };
  });
}

/** What a start plan is made from beside the kept plan. */
export function planFacts(facts: Facts, tests: ReadTests) {
  const { context, today } = facts;
  return {
    ...placingFacts(facts, tests),
    places: placesNow(facts, tests),
    answers: tests.answers,
    limits: context.limits,
    date: today,
    numbers: context.numbers,
  };
}

async function asDrafts(
  tx: TeamPg,
  actor: Actor,
  { input, plan, about }: { input: Input; plan: StartPlan; about: { name: string; today: string } },
  now: Date,
): Promise<PlanOfTestsMade> {
  const save = async (week: 'first' | 'later') => {
    const draft = planDraftSchema.parse(startDraft(plan, { ...about, week }));
    const { address } = await savePlanDraftIn(tx, actor, { clientId: input.clientId, draft }, now);
    return `${address}&template=${input.asked.templateId}`;
  };
  return { address: await save('first'), laterAddress: await save('later') };
}

/** No kept plan fits: the tests as an assessment, and its fewest drills as a draft. */
async function fewestDrills(
  tx: TeamPg,
  actor: Actor & { memberId: string },
  { facts, tests, input }: { facts: Facts; tests: ReadTests; input: Input },
  now: Date,
): Promise<PlanOfTestsMade> {
  const [aim] = tests.aims;
  const made = aim && assessmentOfTests(aim, tests.answers, placingFacts(facts, tests));
  if (!aim || !made) throw new AppError('invalid', 'These tests name no skill to find drills for.');
  const assessment = assessmentSchema.parse(made);
  const result = findGaps(asksOfAssessment(facts.context.library, assessment), assessment, facts.context);
  if (result.chosen.length === 0)
    throw new AppError('invalid', 'No drill was found that is open, allowed and can be done with this kit.');
  const { clientId } = input;
  const assessmentId = await insertAssessment(tx, {
    clientId,
    byId: actor.memberId,
    skillId: aim.skillId,
    onDate: facts.today,
    answers: assessment,
    now,
  });
  await insertAudit(tx, actor, { action: 'assessment-saved', clientId, objectId: assessmentId, fields: [] });
  const skill = facts.context.library.find(({ skillId }) => skillId === aim.skillId)?.skill ?? '';
  const draft = planDraftSchema.parse(
    gapDraft(result, { context: facts.context, skill, onDate: facts.today }),
  );
  return savePlanDraftIn(tx, actor, { clientId, draft }, now);
}

/** The goals that stand, and the skills that the tests were asked for. */
async function goalsWith(tx: TeamPg, clientId: string, { aims }: ReadTests): Promise<PlanInput['goals']> {
  const open = (await listOpenGoals(tx, clientId)).map(({ skillId, wantedBy }) => ({ skillId, wantedBy }));
  const added = [...new Set(aims.map(({ skillId }) => skillId))].filter(
    (id) => !open.some(({ skillId }) => skillId === id),
  );
  return [...open, ...added.map((skillId) => ({ skillId, wantedBy: null }))];
}

function itemOf({ planned: _, ...line }: StartLine) {
  return line;
}
