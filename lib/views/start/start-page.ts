import { GAP_KIT } from '#lib/domain/gap-kit.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import type { GapLadder } from '#lib/planning/gaps/gap-types.ts';
import { askedInWords } from '#lib/planning/gaps/standing-of-part.ts';
import type { TestStep } from '#lib/planning/start/next-tests.ts';
import { type Aim, type ProposedTest, testOf } from '#lib/planning/start/propose-tests.ts';
import type { ProposedPlace } from '#lib/planning/start/start-types.ts';
import { answerInWords, howToTest, sideInWords, testName } from './test-words.ts';

export type StartSkill = {
  id: string;
  name: string;
  on: boolean;
  /** The rung aimed at, and those to choose from; empty while the skill is not chosen. */
  aimRungId: string;
  ladders: { name: string; rungs: { id: string; label: string }[] }[];
};
export type AskLine = {
  ladderId: string;
  rungId: string;
  sets: number;
  film: boolean;
  on: boolean;
  ladder: string;
  name: string;
  how: string;
  /** Why it is asked, or why it is left out. */
  why: string;
};
export type CameLine = { key: string; ladder: string; name: string; said: string; state: TestStep['state'] };
export type PlaceLine = {
  key: string;
  ladderId: string;
  side: Side;
  ladder: string;
  rungId: string;
  rungs: { id: string; label: string }[];
  why: string;
  doubts: string[];
};

export type StartLadder = { id: string; name: string; rungs: { id: string; label: string; sets: number }[] };

/** Every ladder with its rungs, for a test that is added. */
export function startLadders(library: readonly GapLadder[]): StartLadder[] {
  return library
    .filter(({ rungs }) => rungs.length > 0)
    .map((ladder) => ({
      id: ladder.id,
      name: ladder.name,
      rungs: ladder.rungs.map((rung) => ({ ...rungChoice(rung), sets: testOf(ladder, rung).sets })),
    }));
}

/** Skills to tick, each that is ticked with its rungs to aim at. */
export function startSkills(library: readonly GapLadder[], aims: readonly Aim[]): StartSkill[] {
  const skills = new Map<string, StartSkill>();
  for (const ladder of library) {
    if (ladder.rungs.length === 0 || ladder.family === 'mobility') continue;
    const aim = aims.find(({ skillId }) => skillId === ladder.skillId);
    const known: StartSkill = skills.get(ladder.skillId) ?? {
      id: ladder.skillId,
      name: ladder.skill,
      on: aim !== undefined,
      aimRungId: aim?.aimRungId ?? '',
      ladders: [],
    };
    if (aim) known.ladders.push({ name: ladder.name, rungs: ladder.rungs.map(rungChoice) });
    skills.set(ladder.skillId, known);
  }
  return [...skills.values()];
}

export function startKitChoices(kit: readonly string[]): { key: string; label: string; on: boolean }[] {
  return GAP_KIT.map((key) => ({ key, label: key.replaceAll('-', ' '), on: kit.includes(key) }));
}

/** The tests proposed, ticked unless something keeps them out. */
export function askLines(proposed: readonly ProposedTest[]): AskLine[] {
  return proposed.map(({ ladder, rung, why, out, ...test }) => ({
    ...test,
    on: out === null,
    ladder: ladder.name,
    name: testName(ladder, rung),
    how: howToTest(test, ladder, rung),
    why: out ?? why,
  }));
}

/** What was asked and what came of it, test by test and side by side. */
export function cameLines(steps: readonly TestStep[]): CameLine[] {
  return steps.map(({ test, ladder, rung, side, state, answer, words }) => ({
    key: `${test.rungId} ${side}`,
    ladder: ladder.name,
    name: [testName(ladder, rung), sideInWords(side)].filter((one) => one !== '').join(', '),
    said: answer ? answerInWords(answer, rung) : state === 'next' || state === 'waits' ? 'waits' : words,
    state,
  }));
}

/** The rungs proposed, each to be changed before all are taken in one act. */
export function placeLines(places: readonly ProposedPlace[]): PlaceLine[] {
  return places.map(({ ladder, side, rung, why, doubts }) => ({
    key: `${ladder.id} ${side}`,
    ladderId: ladder.id,
    side,
    ladder: [ladder.name, sideInWords(side)].filter((one) => one !== '').join(', '),
    rungId: rung?.id ?? '',
    rungs: ladder.rungs.map(rungChoice),
    why,
    doubts,
  }));
}

function rungChoice(rung: GapLadder['rungs'][number]): { id: string; label: string } {
  return { id: rung.id, label: askedInWords(rung) };
}
