import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryCheckIn, HistoryPlan, HistoryPlanItem, HistoryRung } from '#lib/domain/history.ts';
import { stepDraft } from '#lib/planning/step-draft.ts';
import type { DraftReason, StepContext } from '#lib/planning/steps/step-types.ts';
import {
  aCheckIn,
  aHistory,
  aPlan,
  aPlanItem,
  aRung,
  day,
  evening,
  sets,
} from '#tests/fixtures/history-builders.ts';

const hold = (position: number, over: Partial<HistoryRung> = {}) =>
  aRung({
    id: `toe-${position}`,
    ladderId: 'toe',
    ladder: 'Toe pull',
    skill: 'Handstand',
    part: 'Balance',
    position,
    name: `Toe pull ${position}`,
    family: 'straight-arm-push',
    measure: 'hold',
    eachSide: true,
    secondsPerRep: null,
    pass: { sets: 4, target: 15, days: 2, tries: null },
    weights: { 'wrist-back': 0.9, 'shoulder-forward': 0.3 + position / 10 },
    ...over,
  });
const RUNGS = [hold(1), hold(2), hold(3), aRung()];
const TODAY = day(20);

const line = (side: 'left' | 'right', over: Partial<HistoryPlanItem> = {}) =>
  aPlanItem({ rungId: 'toe-2', side, sets: 4, target: 15, ...over });
const PLAN = aPlan({
  items: [aPlanItem(), line('left'), line('right')],
  skillsInFocus: ['Chest-to-bar pull-up', 'Handstand'],
});

function held(days: number, left: number[], right = left): HistoryCheckIn {
  return aCheckIn(days, {
    sets: [
      ...sets(left, { rungId: 'toe-2', side: 'left', planned: 15 }),
      ...sets(right, { rungId: 'toe-2', side: 'right', planned: 15 }),
    ],
  });
}

function context(over: { checkIns?: HistoryCheckIn[]; plan?: HistoryPlan | null } = {}): StepContext {
  const plan = over.plan === null ? undefined : (over.plan ?? PLAN);
  const history = aHistory({ rungs: RUNGS, plans: plan ? [plan] : [], checkIns: over.checkIns ?? [] });
  return {
    view: buildView(history, evening(20)),
    plan,
    today: TODAY,
    rungs: new Map(RUNGS.map((rung) => [rung.id, rung])),
    limits: DEFAULT_LIMITS,
  };
}

function reason(
  kind: DraftReason['kind'],
  step: DraftReason['step']['kind'],
  over: Partial<DraftReason> = {},
): DraftReason {
  return {
    kind,
    subject: { key: 'toe', label: 'Toe pull 2', ladderId: 'toe', rungId: 'toe-2', side: 'both' },
    step: { kind: step, text: 'Do it' },
    evidence: {},
    ...over,
  };
}
const lines = (items: readonly HistoryPlanItem[] | undefined) =>
  items?.map((item) => `${item.rungId} ${item.side} ${item.sets} x ${item.target}`);

describe('step up', () => {
  const earned = reason('step-up-earned', 'step-up');

  it('puts the next rung at 6 s beside three of this one, once it is held for 12 s', () => {
    const draft = stepDraft(earned, context({ checkIns: [held(10, [15, 15]), held(12, [15, 14])] }));
    expect(lines(draft?.stages[0]?.items)).toEqual([
      'pull-1 both 3 x 5',
      'toe-2 left 3 x 15',
      'toe-3 left 4 x 6',
      'toe-2 right 3 x 15',
      'toe-3 right 4 x 6',
    ]);
    expect(draft?.stages[0]).toMatchObject({ from: TODAY, why: expect.stringContaining('Step up') });
    expect(draft?.stages[0]?.items[1]?.pairedWith).toBe('toe-3');
    expect(draft?.does[0]).toBe(
      'From today Toe pull 3, 4 × 6 s, beside Toe pull 2, 3 × 15 s (common practice, no source).',
    );
    expect(draft?.does[1]).toContain('An estimate');
    expect(draft?.words).toContain('You met the pass mark of Toe pull 2.');
  });

  it('takes the place of this one where there is no pyramid, on the one side it is about', () => {
    const left = { ...earned, subject: { ...earned.subject, side: 'left' as const } };
    expect(lines(stepDraft(left, context())?.stages[0]?.items)).toEqual([
      'pull-1 both 3 x 5',
      'toe-3 left 4 x 6',
      'toe-2 right 4 x 15',
    ]);
  });

  it('says tries as made of tried', () => {
    const tries = { measure: 'made-tried' as const, pass: { sets: 1, target: 5, days: 2, tries: 10 } };
    const rungs = [hold(2, { ...tries, eachSide: false }), hold(3, { ...tries, eachSide: false })];
    const at = context({ plan: aPlan({ items: [aPlanItem({ rungId: 'toe-2' })] }) });
    const draft = stepDraft(earned, { ...at, rungs: new Map(rungs.map((rung) => [rung.id, rung])) });
    expect(draft?.does[0]).toContain('From today Toe pull 3, 5 of 10');
  });

  it('joins a pyramid that is there already to its harder rung', () => {
    const plan = aPlan({
      items: [
        line('left', { pairedWith: 'toe-3' }),
        line('left', { rungId: 'toe-3', target: 8, pairedWith: 'toe-2' }),
      ],
    });
    const items = stepDraft(earned, context({ plan }))?.stages[0]?.items;
    expect(lines(items)).toEqual(['toe-3 left 4 x 6']);
    expect(items?.[0]?.pairedWith).toBeNull();
  });

  it('goes on from the harder rung of a pyramid alone, at what was clean there; the easier goes out', () => {
    const plan = aPlan({
      items: [line('left', { rungId: 'toe-1', pairedWith: 'toe-2' }), line('left', { pairedWith: 'toe-1' })],
    });
    const draft = stepDraft(earned, context({ plan }));
    expect(lines(draft?.stages[0]?.items)).toEqual(['toe-3 left 4 x 6']);
    expect(draft?.stages[0]?.items[0]?.pairedWith).toBeNull();
    expect(draft?.does).toContain('Toe pull 1, the easier half of the pyramid, goes out.');
    const pyramid = stepDraft(earned, context({ plan, checkIns: [held(10, [15, 15]), held(12, [15, 14])] }));
    expect(lines(pyramid?.stages[0]?.items)).toEqual(['toe-2 left 3 x 15', 'toe-3 left 4 x 6']);
    const trained = aPlan({
      items: [line('left', { pairedWith: 'toe-3' }), line('left', { rungId: 'toe-3', pairedWith: 'toe-2' })],
    });
    const clean = aCheckIn(12, { sets: sets([9, 9], { rungId: 'toe-3', side: 'left', planned: 9 }) });
    const checkIns = [held(10, [15, 15]), clean];
    expect(lines(stepDraft(earned, context({ plan: trained, checkIns }))?.stages[0]?.items)).toEqual([
      'toe-3 left 4 x 9',
    ]);
  });

  it('changes nothing on the last rung, or where the plan has no line of it, and says so', () => {
    const last = { ...earned, subject: { ...earned.subject, rungId: 'toe-3' } };
    expect(stepDraft(last, context())).toMatchObject({
      stages: [],
      does: [expect.stringContaining('last rung')],
    });
    expect(stepDraft(earned, context({ plan: null }))).toMatchObject({
      stages: [],
      words: '',
      does: [expect.stringContaining('no line of Toe pull 2')],
    });
  });
});

describe('back', () => {
  it('goes one rung down at the pass mark of that rung', () => {
    const draft = stepDraft(reason('stalled', 'one-rung-back'), context());
    expect(lines(draft?.stages[0]?.items)).toEqual([
      'pull-1 both 3 x 5',
      'toe-1 left 4 x 15',
      'toe-1 right 4 x 15',
    ]);
  });

  it('of a pyramid the harder half waits while the easier goes one rung down', () => {
    const plan = aPlan({
      items: [line('left', { pairedWith: 'toe-3' }), line('left', { rungId: 'toe-3', pairedWith: 'toe-2' })],
    });
    const draft = stepDraft(reason('stalled', 'one-rung-back'), context({ plan }));
    expect(draft?.stages[0]?.items).toMatchObject([{ rungId: 'toe-1', pairedWith: null }]);
    expect(draft?.stages[0]?.items).toHaveLength(1);
    expect(draft?.does).toContain('Toe pull 3, the harder half of the pyramid, goes out.');
  });

  it('from the harder half of a pyramid back onto the easier leaves one line of it, at the new dose', () => {
    const plan = aPlan({
      items: [
        line('left', { rungId: 'toe-1', sets: 3, target: 12, pairedWith: 'toe-2' }),
        line('left', { pairedWith: 'toe-1' }),
      ],
    });
    const items = stepDraft(reason('stalled', 'one-rung-back'), context({ plan }))?.stages[0]?.items;
    expect(lines(items)).toEqual(['toe-1 left 4 x 15']);
    expect(items?.[0]?.pairedWith).toBeNull();
  });

  it('keeps a pyramid whose easier half stands lower still, with what came in the place of the harder', () => {
    const plan = aPlan({
      items: [
        line('left', { rungId: 'toe-1', sets: 3, pairedWith: 'toe-3' }),
        line('left', { rungId: 'toe-3', pairedWith: null }),
      ],
    });
    const subject = {
      key: 'toe',
      label: 'Toe pull 3',
      ladderId: 'toe',
      rungId: 'toe-3',
      side: 'both' as const,
    };
    const items = stepDraft(reason('stalled', 'one-rung-back', { subject }), context({ plan }))?.stages[0]
      ?.items;
    expect(items).toMatchObject([
      { rungId: 'toe-1', sets: 3, pairedWith: 'toe-2' },
      { rungId: 'toe-2', sets: 4, pairedWith: 'toe-1' },
    ]);
  });

  it('of a pyramid on both sides the weak side gives up its easier half, the strong one keeps it', () => {
    const pair = (side: 'left' | 'right') => [
      line(side, { rungId: 'toe-1', sets: 3, pairedWith: 'toe-2' }),
      line(side, { pairedWith: 'toe-1' }),
    ];
    const plan = aPlan({ items: [...pair('left'), ...pair('right')] });
    const gap = reason('side-gap', 'one-side-back', { evidence: { side: 'left' } });
    const checkIns = [held(10, [9, 9], [15, 15]), held(12, [10, 9], [15, 15])];
    const items = stepDraft(gap, context({ plan, checkIns }))?.stages[0]?.items;
    expect(lines(items)).toEqual(['toe-1 left 3 x 15', 'toe-1 right 3 x 15', 'toe-2 right 2 x 9']);
    expect(items?.map(({ pairedWith }) => pairedWith)).toEqual([null, 'toe-2', 'toe-1']);
  });

  it('says that there is nothing easier on the first rung', () => {
    const first = reason('stalled', 'one-rung-back', {
      subject: { key: 'toe', label: 'Toe pull 1', rungId: 'toe-1', side: 'both' },
    });
    expect(stepDraft(first, context())).toMatchObject({
      stages: [],
      does: [expect.stringContaining('split')],
    });
  });

  it('puts the weak side one rung back with three sets, the strong side at its number with two, and asks for a film', () => {
    const gap = reason('side-gap', 'one-side-back', { evidence: { side: 'left' } });
    const checkIns = [held(10, [9, 9], [15, 15]), held(12, [10, 9], [15, 15])];
    const draft = stepDraft(gap, context({ checkIns }));
    expect(lines(draft?.stages[0]?.items)).toEqual([
      'pull-1 both 3 x 5',
      'toe-1 left 3 x 15',
      'toe-2 right 2 x 9',
    ]);
    expect(draft?.film).toMatchObject({ rungId: 'toe-2', side: 'left', byDate: day(27) });
    expect(draft?.words).toContain('The right side waits for the left one.');
  });
});

describe('less', () => {
  it('cuts everything but mobility to 60 %, then 80 %, then as before, as versions of the plan', () => {
    const draft = stepDraft(
      reason('load-jump', 'cut-volume', { subject: { key: 'load', label: '' } }),
      context(),
    );
    expect(
      draft?.stages.map(({ from, items }) => `${from}: ${items.map((item) => item.sets).join(' ')}`),
    ).toEqual([`${TODAY}: 2 2 2`, `${day(27)}: 2 3 3`, `${day(34)}: 3 4 4`]);
    expect(draft?.words).toContain(
      'From today less of all drills but mobility: 60 % of the sets for 7 days, then 80 % for 7 days',
    );
  });

  it('cuts only what loads the sore place, by half for two weeks', () => {
    const sore = reason('pain-rising', 'cut-volume', {
      subject: { key: 'wrist', label: 'left wrist, back', region: 'wrist-back', side: 'left' },
    });
    const sets = stepDraft(sore, context())?.stages.map(({ items }) =>
      items.map((item) => item.sets).join(' '),
    );
    expect(sets).toEqual(['3 2 2', '3 3 3', '3 4 4']);
  });

  it('leaves out steps behind the last planned day', () => {
    const plan = { ...PLAN, until: day(30) };
    const load = reason('load-jump', 'cut-volume', { subject: { key: 'load', label: '' } });
    const draft = stepDraft(load, context({ plan }));
    expect(draft?.stages).toHaveLength(2);
    expect(draft?.words).not.toContain('as before');
  });

  it('drops the last skill in focus with its lines; with one skill it cuts instead', () => {
    const goals = reason('too-many-goals', 'drop-a-goal', { subject: { key: 'goals', label: '' } });
    const draft = stepDraft(goals, context());
    expect(draft).toMatchObject({ dropSkills: ['Handstand'], stages: [{ from: TODAY }] });
    expect(lines(draft?.stages[0]?.items)).toEqual(['pull-1 both 3 x 5']);
    const one = { ...PLAN, skillsInFocus: ['Handstand'] };
    expect(stepDraft(goals, context({ plan: one }))).toMatchObject({ dropSkills: [], stages: [{}, {}, {}] });
  });
});

describe('without a new dose', () => {
  it('moves the drill to the start of its sessions', () => {
    const draft = stepDraft(reason('too-little-time', 'more-time'), context());
    expect(lines(draft?.stages[0]?.items)?.[2]).toBe('pull-1 both 3 x 5');
  });

  it('asks the pass mark of a plan that was outgrown', () => {
    const plan = aPlan({ items: [line('left', { sets: 2, target: 8 })] });
    const draft = stepDraft(reason('plan-outgrown', 'new-plan'), context({ plan }));
    expect(lines(draft?.stages[0]?.items)).toEqual(['toe-2 left 4 x 15']);
  });

  it('asks for a film from behind where the sides are the question', () => {
    const draft = stepDraft(
      reason('one-side-fault', 'ask-film', {
        subject: { key: 'toe', label: '', rungId: 'toe-2', side: 'right' },
      }),
      context(),
    );
    expect(draft?.film).toMatchObject({ side: 'right', angle: expect.stringContaining('behind') });
    expect(draft?.stages).toEqual([]);
  });

  it('rules the place out and sends to a clinician, and never says what it is', () => {
    const high = reason('pain-high', 'send-to-clinician', {
      subject: { key: 'elbow', label: 'left elbow, inner', region: 'elbow-inner', side: 'left' },
    });
    expect(stepDraft(high, context())).toMatchObject({
      limit: { region: 'elbow-inner', side: 'left' },
      words: expect.stringContaining('licensed clinician'),
    });
    const eyes = { ...high, subject: { key: 'eyes', label: 'eyes', region: 'eyes' as const } };
    expect(stepDraft(eyes, context())).toMatchObject({
      limit: null,
      words: expect.stringContaining('clinician'),
    });
  });

  it('writes first where a client has gone quiet, and is no draft where the step is to look or to answer', () => {
    expect(stepDraft(reason('gone-quiet', 'write-first'), context())?.words).toContain('How are things?');
    expect(stepDraft(reason('not-seen', 'look'), context())).toBeUndefined();
    expect(stepDraft(reason('question-waiting', 'answer'), context())).toBeUndefined();
    const ending = reason('plan-ending', 'new-plan', { subject: { key: 'plan', label: '' } });
    expect(stepDraft(ending, context())).toBeUndefined();
  });

  it('uses no praise and no exclamation mark in any words', () => {
    const kinds = [
      'step-up',
      'one-rung-back',
      'cut-volume',
      'drop-a-goal',
      'ask-film',
      'more-time',
      'write-first',
    ] as const;
    for (const kind of kinds) {
      const draft = stepDraft(reason(kind === 'write-first' ? 'fading' : 'stalled', kind), context());
      expect(draft?.words).not.toMatch(/!|well done|great|proud|amazing/i);
      expect(draft?.words).not.toBe('');
    }
  });
});
