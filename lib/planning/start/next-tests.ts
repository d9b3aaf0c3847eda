import type { Limits } from '#lib/checks/thresholds.ts';
import type { HistoryLimit } from '#lib/domain/history.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';
import { limitOnItem } from '../limit-on-item.ts';
import { isSameDrill, rungsOfDrill, sidesOf } from './same-drill.ts';
import { openedBy } from './start-openings.ts';
import { type Reach, reachOf } from './start-reach.ts';
import type { StartAnswer, StartFacts, StartTest } from './start-types.ts';

/**
 * Where a test stands for the client. `answered`; `next`: to be done now; `stopped`: an easier one of the ladder could
 * not be done, hurt or fell short; `waits`: an easier one or what opens it is not answered yet; `closed`: what must
 * stand before does not, or a limit rules it out.
 */
export type TestState = 'answered' | 'next' | 'stopped' | 'waits' | 'closed';
export type TestStep = {
  test: StartTest;
  ladder: GapLadder;
  /** The easiest rung of the drill: what must stand before it decides whether the drill is asked. */
  rung: GapRung;
  side: Side;
  state: TestState;
  /** What it is done on where it is open on that support only. */
  on: Support | null;
  answer: StartAnswer | undefined;
  /** Why it is stopped or closed. */
  words: string;
};

type Sheet = {
  tests: readonly StartTest[];
  answers: readonly StartAnswer[];
  facts: StartFacts;
  limits: readonly HistoryLimit[];
  date: string;
  numbers: Limits;
};

/**
 * Every test with each of its sides, in the order of the tests, and where it stands. A harder drill of a ladder comes up
 * only once the easier one was done clean to three quarters of a pass mark, on that side. Tests of rungs that are no
 * longer in the ladders are left out.
 */
export function testSteps(sheet: Sheet): TestStep[] {
  const placed = sheet.tests.flatMap((test) => {
    const ladder = sheet.facts.library.find(({ id }) => id === test.ladderId);
    const hardest = ladder?.rungs.find(({ id }) => id === test.rungId);
    const rung = ladder && hardest && rungsOfDrill(ladder, hardest)[0];
    return ladder && rung ? [{ test, ladder, rung }] : [];
  });
  return placed.flatMap((one) =>
    sidesOf(one.rung).map((side) => {
      const answer = answerOf(one.test, side, sheet.answers);
      const easier = placed.filter(
        ({ ladder, rung }) => ladder.id === one.ladder.id && rung.position < one.rung.position,
      );
      return { ...one, side, answer, ...stateOf({ ...one, side, answer, easier }, sheet) };
    }),
  );
}

/** How many tests and sides are still to be done. */
export function stepsLeft(steps: readonly Pick<TestStep, 'state'>[]): number {
  return steps.filter(({ state }) => state === 'next' || state === 'waits').length;
}

type Placed = { test: StartTest; ladder: GapLadder; rung: GapRung };
type Asked = Placed & { side: Side; answer: StartAnswer | undefined; easier: readonly Placed[] };

function stateOf(asked: Asked, sheet: Sheet): Pick<TestStep, 'state' | 'on' | 'words'> {
  const opened = openedBy(asked, sheet.answers, sheet.facts);
  const on = opened.open ? opened.on : null;
  if (asked.answer) return { state: 'answered', on, words: '' };
  const { limit, share } = limitOnItem(
    sheet.limits,
    { rung: asked.rung, side: asked.side, support: on },
    sheet.date,
    sheet.numbers,
  );
  if (limit && share <= 0) return { state: 'closed', on, words: 'A limit rules it out for now.' };
  const below = asked.easier.flatMap((one) => reachesOf(one, asked.side, sheet.answers));
  if (below.some((reach) => reach === 'cannot' || reach === 'short'))
    return { state: 'stopped', on, words: 'The easier one comes first.' };
  if (below.includes('hurts')) return { state: 'stopped', on, words: 'The easier one hurt.' };
  if (below.includes('unknown')) return { state: 'waits', on, words: '' };
  if (opened.open) return { state: 'next', on, words: '' };
  return { state: 'closed', on, words: `Not open yet: ${opened.words}.` };
}

/** How far an easier drill was done on this side; of one done on both sides, or asked with both, each counts. */
function reachesOf({ test, ladder, rung }: Placed, side: Side, answers: readonly StartAnswer[]): Reach[] {
  const sides = sidesOf(rung).filter((one) => one === side || one === 'both' || side === 'both');
  return sides.map((one) => {
    const answer = answerOf(test, one, answers);
    const best = ladder.rungs.filter((each) => isSameDrill(each, rung)).map((each) => reachOf(each, answer));
    return best.find((reach) => reach === 'met' || reach === 'in-reach') ?? best[0] ?? 'unknown';
  });
}

function answerOf(test: StartTest, side: Side, answers: readonly StartAnswer[]): StartAnswer | undefined {
  return answers.find(
    (one) => one.ladderId === test.ladderId && one.rungId === test.rungId && one.side === side,
  );
}
