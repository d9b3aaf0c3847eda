import { describe, expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { testSteps } from '#lib/planning/start/next-tests.ts';
import { proposeTests } from '#lib/planning/start/propose-tests.ts';
import { startPlan } from '#lib/planning/start/start-plan.ts';
import { planDraftSchema } from '#lib/schemas/plan-draft.ts';
import { phoneTests } from '#lib/views/start/phone-tests.ts';
import { startDraft } from '#lib/views/start/start-draft.ts';
import { askLines, startSkills } from '#lib/views/start/start-page.ts';
import { startLead } from '#lib/views/start/start-words.ts';
import { answerInWords, howToTest } from '#lib/views/start/test-words.ts';
import {
  answer,
  asked,
  at,
  cannot,
  FACTS,
  hurts,
  PROPOSE,
} from '#tests/unit/planning/start/start-fixture.ts';

describe('what the phone says of a test', () => {
  const how = (key: string) => {
    const [test] = asked(key);
    return test ? howToTest(test, at(key).ladder, at(key).rung) : '';
  };
  test.each([
    ['H3.3', /^3 sets, two minutes of rest between\. Hold as long as it is clean, at most 30 s\./],
    ['H2.1', /^2 sets/],
    ['H1.2', /As many clean reps as go, at most 3\. Stop before the first that is not clean\.$/],
    ['H1.3', /^10 tries, with rest\. Count the good ones\.$/],
    ['P3.1', /^3 slow ways down/],
    ['X1.1', /Measure the angle/],
    ['X3.1', /Measure in cm; past the mark is minus/],
  ])('%s', (key, words) => {
    expect(how(key)).toMatch(words);
  });

  test('and of an answer', () => {
    const of = (key: string, said = answer(key, [12, 10, 8])) => answerInWords(said, at(key).rung);
    expect(of('H3.3')).toBe('12, 10, 8 s, clean');
    expect(of('H3.3', answer('H3.3', [12], { clean: false }))).toBe('12 s, not clean');
    expect(of('H1.3', answer('H1.3', [6]))).toBe('6 good of 10 tries');
    expect(of('X1.1', answer('X1.1', [155], { clean: null }))).toBe('155°');
    expect(of('H3.3', cannot('H3.3'))).toBe('Cannot yet');
    expect(of('H3.3', hurts('H3.3', 4, { side: 'left' }))).toBe('Hurts, 4 of 10, left wrist, back');
  });

  test('one after the other, with how many are left', () => {
    const steps = testSteps({
      tests: asked('H2.1', 'H2.3', 'X2.3'),
      answers: [answer('H2.1', [60, 60])],
      facts: FACTS,
      limits: [],
      date: '2026-11-25',
      numbers: DEFAULT_LIMITS,
    });
    const phone = phoneTests(
      { testsId: 't', clientId: 'c', coach: 'Ana', team: 'Low Wall', under18: false, words: '' },
      steps,
      new Map(),
    );
    expect(phone.progress).toBe('1 answered, 3 to go');
    expect(phone.tests.map(({ name, about, state }) => [name, about, state])).toEqual([
      ['Front support, blades pushed apart', '', 'answered'],
      ['Box pike, feet hip-high, hips over hands', '', 'next'],
      ['Wrist bent back, loaded', 'left side', 'next'],
      ['Wrist bent back, loaded', 'right side', 'next'],
    ]);
    expect(phone.tests[1]).toMatchObject({ kit: ['box'], sets: 3, counting: 'sets', unit: 's' });
  });
});

test('what is left out is not ticked and says why', () => {
  const pull = [{ skillId: 'Chest-to-bar pull-up', aimRungId: 'CB.5' }];
  const lines = askLines(proposeTests(pull, PROPOSE));
  expect(lines.every(({ on }) => !on)).toBe(true);
  expect(lines[0]?.why).toMatch(/^Needs bar/);
  expect(
    startSkills(PROPOSE.library, pull)
      .filter(({ on }) => on)
      .map(({ aimRungId }) => aimRungId),
  ).toEqual(['CB.5']);
});

test('the drafts of a start plan can be kept: the first week with fewer sets, what is left out taken out', () => {
  const line = (rungId: string) => ({
    session: 'A',
    rungId,
    side: 'both' as const,
    sets: 4,
    target: 30,
    minutes: null,
    timesPerWeek: 2,
    support: null,
    stopRule: '',
    notTwoDaysRunning: false,
    pairedWith: null,
    noKitRungId: null,
  });
  const facts = { ...FACTS, answers: [], limits: [], date: '2026-11-25', numbers: DEFAULT_LIMITS };
  const places = [{ ladderId: 'H2', side: 'both' as const, rungId: 'H2.3' }];
  const plan = startPlan([line('H2.6'), line('PU.6')], { ...facts, places });
  const draft = (week: 'first' | 'later') =>
    startDraft(plan, { name: 'First month', today: '2026-11-25', week });
  expect(
    draft('first').lines.map(({ act, rungId, sets, replaces }) => [act, rungId, sets, replaces]),
  ).toEqual([
    ['put', 'H2.3', 2, 'H2.6'],
    ['drop', 'PU.6', 4, undefined],
  ]);
  expect(draft('first').later).toEqual(['from Wednesday 2 December the full dose: a second draft holds it']);
  expect(draft('later').lines[0]).toMatchObject({ sets: 4, why: 'As the start tests place it.' });
  // Ids of a team are no keys: all else has the form in which drafts are kept.
  const uuid = '00000000-0000-4000-8000-000000000000';
  const kept = draft('later');
  const lines = kept.lines.map((one) => ({ ...one, rungId: uuid, ...(one.replaces && { replaces: uuid }) }));
  expect(planDraftSchema.safeParse({ ...kept, lines }).success).toBe(true);
});

test('the lead says who starts how, and against which week', () => {
  const told = { toldWeekAu: 630.4, asked: null };
  expect(startLead({ ...told, startsAs: 'new' })).toBe(
    'In the first weeks here. Usual week told at the start: 630 AU, the ceiling of weeks 1 to 4. No start tests are asked.',
  );
  expect(startLead({ ...told, startsAs: 'known' })).not.toContain('ceiling');
  expect(startLead({ ...told, toldWeekAu: null, startsAs: 'back-as-new' })).toContain(
    'Back after 12 weeks or more: starts as new, the history is kept. No usual week was told at the start.',
  );
});
