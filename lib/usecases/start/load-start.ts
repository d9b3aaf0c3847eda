import type { Actor } from '#lib/auth/actor.ts';
import { may } from '#lib/auth/permissions.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { listOpenGoals } from '#lib/db/goals.ts';
import { listTemplateBodies } from '#lib/db/plan-templates.ts';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import { usualAim } from '#lib/planning/gaps/usual-aim.ts';
import { stepsLeft } from '#lib/planning/start/next-tests.ts';
import { placeClient } from '#lib/planning/start/place-client.ts';
import { type Aim, proposeTests } from '#lib/planning/start/propose-tests.ts';
import { startPlan } from '#lib/planning/start/start-plan.ts';
import { planTemplateSchema } from '#lib/schemas/plan.ts';
import type { StartAsked } from '#lib/schemas/start-tests.ts';
import { type DangerNow, dangersNow } from '#lib/views/dangers-now.ts';
import {
  type AskLine,
  askLines,
  type CameLine,
  cameLines,
  type PlaceLine,
  placeLines,
  type StartLadder,
  type StartSkill,
  startKitChoices,
  startLadders,
  startSkills,
} from '#lib/views/start/start-page.ts';
import { foreseeStart } from './foresee-start.ts';
import { planFacts } from './plan-from-tests.ts';
import {
  loadStartFacts,
  placingFacts,
  type ReadTests,
  type StartLoaded,
  type StartsAs,
  stepsOf,
} from './start-facts.ts';

export type TemplateFit = {
  id: string;
  name: string;
  fits: number;
  of: number;
  leftOut: string[];
  foreseen: string[];
};
export type StartPage = {
  clientId: string;
  name: string;
  under18: boolean;
  startsAs: StartsAs;
  toldWeekAu: number | null;
  dangers: DangerNow[];
  mayEdit: boolean;
  mayPlan: boolean;
  /** To ask tests: what can be chosen, and the tests proposed for what is chosen. */
  skills: StartSkill[];
  kit: { key: string; label: string; on: boolean }[];
  aims: Aim[];
  proposed: AskLine[];
  /** Every ladder, for a test that is added. */
  ladders: StartLadder[];
  /** Tests that are open, or by which the client was placed last. */
  asked: AskedTests | null;
  templates: TemplateFit[];
};
export type AskedTests = {
  id: string;
  by: string;
  askedOn: string;
  answered: number;
  left: number;
  done: boolean;
  came: CameLine[];
  places: PlaceLine[];
  placedOn: string | null;
};

/** Everything of a client's start: what is asked, what came, where it places them, which kept plans fit. */
export function loadStart(
  actor: Actor,
  clientId: string,
  address: StartAsked,
  now: Date,
): Promise<StartPage | undefined> {
  return withTeamPg(actor.scope, async (tx) => {
    const facts = await loadStartFacts(tx, clientId, now);
    if (!facts) return undefined;
    const { client, context, view } = facts;
    const goals = await listOpenGoals(tx, clientId);
    const wanted =
      address.skill.length > 0 || address.asked ? address.skill : goals.map(({ skillId }) => skillId);
    const aims = aimsOf(context.library, wanted, address.aim);
    const kit = address.asked ? GAP_KIT.filter((one) => address.kit?.includes(one)) : facts.kit;
    const [newest] = facts.asked;
    const [open] = facts.asked.filter(({ placedAt }) => placedAt === null);
    const templates: TemplateFit[] = [];
    if (newest)
      for (const { id, name, body } of await listTemplateBodies(tx)) {
        const read = planTemplateSchema.safeParse({ name, body });
        if (read.success) templates.push(fitOf({ id, name, ...read.data.body }, facts, newest));
      }
    return {
      clientId,
      name: client.name,
      under18: client.under18,
      startsAs: facts.startsAs,
      toldWeekAu: client.toldWeekAu,
      dangers: dangersNow(view),
      mayEdit: may(actor.role, 'edit-clients'),
      mayPlan: may(actor.role, 'edit-plans'),
      skills: startSkills(context.library, aims),
      kit: startKitChoices(kit),
      aims,
      proposed: open
        ? []
        : askLines(
            proposeTests(aims, {
              library: context.library,
              kit,
              date: facts.today,
              limits: context.limits,
              numbers: context.numbers,
            }),
          ),
      ladders: open ? [] : startLadders(context.library),
      asked: newest ? askedTests(facts, newest) : null,
      templates: templates.sort((a, b) => b.fits - a.fits),
    };
  });
}

/** The skills wanted with the rung chosen of each, else the usual aim. */
function aimsOf(
  library: StartLoaded['context']['library'],
  skillIds: readonly string[],
  aimIds: readonly string[],
): Aim[] {
  return [...new Set(skillIds)].flatMap((skillId) => {
    const rungs = library.filter((ladder) => ladder.skillId === skillId).flatMap((ladder) => ladder.rungs);
    const aim = rungs.find(({ id }) => aimIds.includes(id)) ?? usualAim(library, skillId);
    return aim ? [{ skillId, aimRungId: aim.id }] : [];
  });
}

function askedTests(facts: StartLoaded, tests: ReadTests): AskedTests {
  const steps = stepsOf(facts, tests);
  const left = stepsLeft(steps);
  const { zone } = facts.client;
  return {
    id: tests.id,
    by: tests.by,
    askedOn: localDateOf(tests.askedAt, zone),
    answered: tests.answers.length,
    left,
    done: left === 0,
    came: cameLines(steps),
    places: placeLines(placeClient(tests.tests, tests.answers, placingFacts(facts, tests))),
    placedOn: tests.placedAt && localDateOf(tests.placedAt, zone),
  };
}

function fitOf(
  template: { id: string; name: string; sessionsPerWeek: number; items: Parameters<typeof startPlan>[0] },
  facts: StartLoaded,
  tests: ReadTests,
): TemplateFit {
  const plan = startPlan(template.items, planFacts(facts, tests));
  const { lines, leftOut } = plan;
  return {
    id: template.id,
    name: template.name,
    fits: lines.length,
    of: lines.length + leftOut.length,
    leftOut: leftOut.map(({ name, why }) => `${name} ${why}`),
    foreseen: foreseeStart(facts, plan, template.sessionsPerWeek),
  };
}
