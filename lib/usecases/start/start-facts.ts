import { daysHere, isAwayAsNew, newStartAt } from '#lib/checks/new-start.ts';
import type { TeamPg } from '#lib/db/client.ts';
import { findToldKit, listStartTests, type StartTestsRow } from '#lib/db/start-tests.ts';
import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import { type TestStep, testSteps } from '#lib/planning/start/next-tests.ts';
import { placeClient } from '#lib/planning/start/place-client.ts';
import type { Aim } from '#lib/planning/start/propose-tests.ts';
import type { StandsOn } from '#lib/planning/start/start-plan.ts';
import type { StartAnswer, StartFacts, StartTest } from '#lib/planning/start/start-types.ts';
import { type Placed, placedSchema, startAims, startAnswers, startTests } from '#lib/schemas/start-tests.ts';
import { type GapFacts, loadGapFacts } from '../gap-facts.ts';

/** Start tests as they were kept, read. */
export type ReadTests = Omit<StartTestsRow, 'aims' | 'tests' | 'answers' | 'placed' | 'kit'> & {
  aims: Aim[];
  kit: string[];
  tests: StartTest[];
  answers: StartAnswer[];
  placed: Placed | null;
};

/** Why tests are offered: nothing trained here yet, back after 12 weeks and more, or neither. */
export type StartsAs = 'new' | 'back-as-new' | 'known';

export type StartLoaded = GapFacts & {
  /** Newest first; those taken back are left out. */
  asked: ReadTests[];
  startsAs: StartsAs;
  /** Kit at hand: as in the newest tests, else as told at the start. */
  kit: string[];
};

/** What a start is made of; undefined: no such client here. */
export async function loadStartFacts(
  tx: TeamPg,
  clientId: string,
  now: Date,
): Promise<StartLoaded | undefined> {
  const facts = await loadGapFacts(tx, clientId, now);
  if (!facts) return undefined;
  const asked = (await listStartTests(tx, clientId)).filter(({ endedAt }) => endedAt === null).map(readTests);
  const told = await findToldKit(tx, clientId);
  return {
    ...facts,
    asked,
    startsAs: startsAs(facts),
    kit: asked[0]?.kit ?? GAP_KIT.filter((one) => Array.isArray(told) && told.includes(one)),
  };
}

export function readTests(row: StartTestsRow): ReadTests {
  return {
    ...row,
    aims: startAims.parse(row.aims),
    tests: startTests.parse(row.tests),
    answers: startAnswers.parse(row.answers),
    placed: placedSchema.nullable().parse(row.placed),
  };
}

/** What decides beside the answers. Placements from before a new start do not count. */
export function placingFacts({ view, context }: GapFacts, tests: ReadTests): StartFacts {
  const from = view.days[newStartAt(view)]?.date ?? '';
  const isAnew = newStartAt(view) > 0;
  return {
    library: context.library,
    kit: tests.kit,
    under18: context.under18,
    under18Allowed: tests.under18Allowed,
    standing: isAwayAsNew(view) ? [] : view.standing.filter((one) => !isAnew || one.from >= from),
  };
}

/** Every test with each of its sides and where it stands, by the answers that were kept or by others. */
export function stepsOf(facts: GapFacts, tests: ReadTests, answers = tests.answers): TestStep[] {
  return testSteps({
    tests: tests.tests,
    answers,
    facts: placingFacts(facts, tests),
    limits: facts.context.limits,
    date: facts.today,
    numbers: facts.context.numbers,
  });
}

/** Where the client stands for a start plan: as placed by these tests, on other ladders as they stand now. */
export function placesNow(facts: GapFacts, tests: ReadTests): StandsOn[] {
  const tested = new Set(tests.tests.map(({ ladderId }) => ladderId));
  const placed = tests.placed?.placements ?? [];
  const proposed = placeClient(tests.tests, tests.answers, placingFacts(facts, tests)).map(
    ({ ladder, side, rung }): StandsOn => ({ ladderId: ladder.id, side, rungId: rung?.id ?? null }),
  );
  const left = proposed.filter(
    (one) => !placed.some(({ ladderId, side }) => ladderId === one.ladderId && side === one.side),
  );
  const own = tests.placed ? [...placed, ...left.map((one) => ({ ...one, rungId: null }))] : proposed;
  const others = placingFacts(facts, tests).standing.filter(({ ladderId }) => !tested.has(ladderId));
  return [...own, ...others];
}

function startsAs({ view }: GapFacts): StartsAs {
  if (isAwayAsNew(view)) return 'back-as-new';
  const first = daysHere(view) <= view.limits['coldStart.days'];
  if (!first) return 'known';
  return newStartAt(view) > 0 ? 'back-as-new' : 'new';
}
