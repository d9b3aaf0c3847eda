import { kitNeeded } from '#lib/domain/kit.ts';
import { MEASURE_UNITS } from '#lib/domain/labels.ts';
import type { PainRegion, Side } from '#lib/domain/vocabulary.ts';
import { stepsLeft, type TestState, type TestStep } from '#lib/planning/start/next-tests.ts';
import type { StartAnswer } from '#lib/planning/start/start-types.ts';
import { answerInWords, howToTest, mostAsked, onInWords, sideInWords, testName } from './test-words.ts';

/** One test on one side, as the phone shows it. */
export type PhoneTest = {
  key: string;
  ladderId: string;
  rungId: string;
  side: Side;
  state: TestState;
  name: string;
  /** Side and support; empty where neither is to be said. */
  about: string;
  how: string;
  /** What clean means here. */
  clean: string;
  /** Where the camera stands; empty: no film is asked. */
  camera: string;
  kit: string[];
  unit: string;
  kind: 'seconds' | 'count' | 'degrees';
  counting: 'sets' | 'tries' | 'range';
  sets: number;
  least: number;
  most: number;
  said: string;
  why: string;
  answer: (Omit<StartAnswer, 'values'> & { values: number[]; region: PainRegion | null }) | null;
};
export type PhoneTests = {
  testsId: string;
  clientId: string;
  coach: string;
  team: string;
  under18: boolean;
  words: string;
  /** Ready to be sent to the coach: nothing is left to do. */
  done: boolean;
  /** "4 of 11 answered". */
  progress: string;
  tests: PhoneTest[];
};

type How = ReadonlyMap<string, { clean: string; camera: string; note: string }>;
/** No result of a person is more than this: s, reps, degrees or cm. */
const MOST = 600;

/** The start tests as the phone asks them, in their order. */
export function phoneTests(
  about: Pick<PhoneTests, 'testsId' | 'clientId' | 'coach' | 'team' | 'under18' | 'words'>,
  steps: readonly TestStep[],
  how: How,
): PhoneTests {
  const answered = steps.filter(({ state }) => state === 'answered').length;
  const left = stepsLeft(steps);
  return {
    ...about,
    done: left === 0,
    progress: `${answered} answered, ${left === 0 ? 'none' : left} to go`,
    tests: steps.map((step) => phoneTest(step, how)),
  };
}

function phoneTest(step: TestStep, how: How): PhoneTest {
  const { test, ladder, rung, side, answer } = step;
  const said = how.get(test.rungId);
  return {
    key: `${test.rungId} ${side}`,
    ladderId: test.ladderId,
    rungId: test.rungId,
    side,
    state: step.state,
    name: testName(ladder, rung),
    about: [sideInWords(side), onInWords(step.on)].filter((one) => one !== '').join(', '),
    how: howToTest(test, ladder, rung),
    clean: said?.clean ?? '',
    camera: test.film ? said?.camera || 'From the side, all of you in the picture.' : '',
    kit: kitNeeded(rung.equipment),
    unit: unitOf(step),
    kind: kindOf(step),
    counting: rung.measure === 'made-tried' ? 'tries' : rung.measure.startsWith('range') ? 'range' : 'sets',
    sets: test.sets,
    least: rung.measure === 'range-down' ? -60 : 0,
    most: rung.measure === 'made-tried' ? test.sets : Math.max(mostAsked(ladder, rung), MOST),
    said: answer ? answerInWords(answer, rung) : '',
    why: step.words,
    answer: answer ? { ...answer, values: [...answer.values] } : null,
  };
}

function unitOf({ rung }: TestStep): string {
  if (rung.measure === 'range-up') return 'degrees';
  return MEASURE_UNITS[rung.measure];
}

function kindOf({ rung }: TestStep): PhoneTest['kind'] {
  if (rung.measure === 'hold' || rung.measure === 'lowering') return 'seconds';
  return rung.measure.startsWith('range') ? 'degrees' : 'count';
}
