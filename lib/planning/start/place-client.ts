import { SUPPORT_LABELS } from '#lib/domain/labels.ts';
import type { Side, Support } from '#lib/domain/vocabulary.ts';
import type { GapLadder, GapRung } from '../gaps/gap-types.ts';
import { askedInWords } from '../gaps/standing-of-part.ts';
import { isRange, rungsOfDrill, sidesOf } from './same-drill.ts';
import { openedBy } from './start-openings.ts';
import { answerFor, type Reach, reachOf, shareOfTest } from './start-reach.ts';
import type { ProposedPlace, StartAnswer, StartFacts, StartTest } from './start-types.ts';

/**
 * Where each tested ladder and side is proposed to begin: the highest rung whose pass mark a test met or came to three
 * quarters of, clean and with pain under 3, below everything that could not be done, fell short or hurt, and never
 * above a rung whose opening does not stand. Half-open ladders are proposed on the support that opens them. Without a
 * result the first rung, and that is said; where nothing fits, no rung and why. In the order of the library. The three
 * quarters: common practice, no source.
 */
export function placeClient(
  tests: readonly StartTest[],
  answers: readonly StartAnswer[],
  facts: StartFacts,
): ProposedPlace[] {
  return facts.library.flatMap((ladder) => {
    const tested = tests.flatMap((test) => {
      const rung = ladder.rungs.find(({ id }) => id === test.rungId);
      return test.ladderId === ladder.id && rung ? [rung] : [];
    });
    const sides = tested.some((rung) => sidesOf(rung).length > 1)
      ? (['left', 'right'] as const)
      : (['both'] as const);
    if (tested.length === 0) return [];
    return togetherWhereBoth(sides.map((side) => placeOn({ ladder, side, tested }, answers, facts)));
  });
}

type Asked = { ladder: GapLadder; side: Side; tested: readonly GapRung[] };
type Judged = { rung: GapRung; reach: Reach; answer: StartAnswer | undefined };
type Begin = { rung: GapRung | null; why: string; doubts: string[] };

function placeOn(asked: Asked, answers: readonly StartAnswer[], facts: StartFacts): ProposedPlace {
  const { ladder, side } = asked;
  const judged = asked.tested
    .flatMap((one) => rungsOfDrill(ladder, one))
    .sort((a, b) => a.position - b.position)
    .map((rung): Judged => {
      const answer = answerFor(answers, ladder, rung, side);
      return { rung, answer, reach: reachOf(rung, answer) };
    });
  const begin = beginAt(ladder, judged);
  if (!begin.rung) return { ladder, side, on: null, ...begin };
  return opened({ ladder, side }, { ...begin, rung: begin.rung }, answers, facts);
}

/**
 * A rung done with both hands holds for both sides: where one side comes out on such a rung, the side that is further
 * down decides for both. Sides that each come out on a rung of their own stay apart.
 */
function togetherWhereBoth(places: ProposedPlace[]): ProposedPlace[] {
  const [left, right] = places;
  if (!left || !right) return places;
  const isBoth = ({ rung }: ProposedPlace) => rung !== null && sidesOf(rung).length === 1;
  if (!isBoth(left) && !isBoth(right)) return places;
  const height = ({ rung }: ProposedPlace) => rung?.position ?? Number.NEGATIVE_INFINITY;
  const lower = height(right) < height(left) ? right : left;
  const differ =
    height(left) === height(right) ? [] : [`The sides differ: the ${lower.side} one decides for both.`];
  const doubts = [...new Set([...left.doubts, ...right.doubts, ...differ])];
  return [{ ...lower, side: 'both', doubts }];
}

function beginAt(ladder: GapLadder, judged: readonly Judged[]): Begin {
  const isGood = ({ reach }: Judged) => reach === 'met' || reach === 'in-reach';
  const failed = judged.find((one) => isFailed(one, judged));
  const below = judged.filter(({ rung }) => !failed || rung.position < failed.rung.position);
  const best = below.filter(isGood).at(-1);
  const beyond = failed && judged.find((one) => isGood(one) && one.rung.position > failed.rung.position);
  const doubts = [
    ...(beyond && failed
      ? [
          `Results contradict each other: ${nameOf(beyond.rung)} was done, ${nameOf(failed.rung)} before it was not.`,
        ]
      : []),
    ...hurtDoubt(judged),
  ];
  if (best) return { rung: best.rung, why: doneInWords(best), doubts };
  const [first] = ladder.rungs;
  if (!first) return { rung: null, why: 'This ladder has no rungs.', doubts };
  if (!failed) {
    const said = 'No result: the first rung until there is one.';
    return { rung: first, why: said, doubts: [...doubts, 'Nothing was answered on this ladder.'] };
  }
  const isHarder = failed.rung.id !== first.id || (isRange(first) && failed.reach === 'cannot');
  if (isHarder && failed.reach !== 'hurts')
    return { rung: first, why: `${failedInWords(failed)}: the first rung.`, doubts };
  if (failed.reach === 'short')
    return { rung: first, why: `${failedInWords(failed)}: the first rung.`, doubts };
  return { rung: null, why: `${failedInWords(failed)}: nothing easier in this ladder was shown.`, doubts };
}

/** A pass mark missed by a drill whose easier pass mark was met is only the next rung, not a failure. */
function isFailed({ rung, reach, answer }: Judged, judged: readonly Judged[]): boolean {
  if (reach === 'cannot' || reach === 'hurts') return true;
  if (reach !== 'short') return false;
  return !judged.some(
    (other) =>
      other.answer === answer &&
      other.rung.position < rung.position &&
      (other.reach === 'met' || other.reach === 'in-reach'),
  );
}

function opened(
  { ladder, side }: { ladder: GapLadder; side: Side },
  begin: Begin & { rung: GapRung },
  answers: readonly StartAnswer[],
  facts: StartFacts,
): ProposedPlace {
  const upTo = ladder.rungs.filter(({ position }) => position <= begin.rung.position).reverse();
  let closed = '';
  for (const rung of upTo) {
    const state = openedBy({ ladder, rung }, answers, facts);
    if (!state.open) {
      closed = state.words;
      continue;
    }
    const why = closed === '' ? begin.why : `${begin.why} Above it: not open yet, ${closed}.`;
    return { ladder, side, rung, on: state.on, why: withSupport(why, state.on), doubts: begin.doubts };
  }
  return { ladder, side, rung: null, on: null, why: `Not open yet: ${closed}.`, doubts: begin.doubts };
}

function withSupport(why: string, on: Support | null): string {
  return on === null ? why : `${why} Open only ${SUPPORT_LABELS[on]}.`;
}

function hurtDoubt(judged: readonly Judged[]): string[] {
  const sore = judged.find(({ reach }) => reach === 'hurts');
  if (!sore?.answer) return [];
  return [`It hurt: ${sore.answer.pain ?? 'not said how much'} of 10 on ${nameOf(sore.rung)}.`];
}

function doneInWords({ rung, reach, answer }: Judged): string {
  if (reach === 'met') return `The pass mark was met: ${askedInWords(rung)}.`;
  const percent = Math.floor((answer ? shareOfTest(rung, answer) : 0) * 100);
  return `Comfortably in reach: ${percent} % of ${askedInWords(rung)}, clean.`;
}

function failedInWords({ rung, reach, answer }: Judged): string {
  if (reach === 'cannot') return `${nameOf(rung)} cannot be done yet`;
  if (reach === 'hurts') return `${nameOf(rung)} hurt`;
  if (answer?.clean === false) return `${nameOf(rung)} was not clean`;
  return `${nameOf(rung)} fell short of its pass mark`;
}

function nameOf(rung: GapRung): string {
  return isRange(rung) ? rung.ladder : rung.name;
}
