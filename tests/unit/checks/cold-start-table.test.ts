import { describe, expect, it } from 'vitest';
import { drillsOf } from '#lib/checks/drill-days.ts';
import { forecast } from '#lib/checks/forecast.ts';
import { biggerSessions, moreSets } from '#lib/checks/load-causes.ts';
import { loadFigures } from '#lib/checks/load-figures.ts';
import { loadsOf } from '#lib/checks/load-series.ts';
import { CHECKS } from '#lib/checks/registry.ts';
import { standingsOf } from '#lib/checks/standings.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryCheckIn, HistoryClient } from '#lib/domain/history.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { projectLoads } from '#lib/planning/project-loads.ts';
import { firstWeekOf } from '#lib/planning/start/start-plan.ts';
import {
  aCheckIn,
  aHistory,
  aPain,
  aPlan,
  aPlanItem,
  aRestDay,
  aRung,
  aSet,
  day,
  evening,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

/**
 * What each check does in the first weeks of a client, line by line, on the days on which it begins to speak; and the
 * same for somebody who trained here, was away for 16 weeks and is back: the first weeks run from the return.
 */
type Who = { name: string /** Day of the first training that counts. */; o: number; past: HistoryCheckIn[] };
const NEW: Who = { name: 'new', o: 0, past: [] };
const BACK: Who = { name: 'back after 16 weeks', o: 168, past: threeAWeek(8) };
const WHO = [NEW, BACK];

const about = (kind: CheckKind) => {
  const check = CHECKS.find((one) => one.kind === kind);
  if (!check) throw new Error(`no check ${kind}`);
  return check;
};
type Told = Omit<Partial<ClientHistory>, 'client'> & { client?: Partial<HistoryClient> };
/** The history of somebody: what `told` says, behind what was before. */
const lifeOf = ({ o, past }: Who, { checkIns = [], ...told }: Told) =>
  aHistory({
    placements: [{ ladderId: 'pull', side: 'both', rungId: 'pull-1', from: day(o) }],
    plans: [aPlan({ from: day(o) })],
    ...told,
    checkIns: [...past, ...checkIns],
  });
/** The first thing that is said on an evening `n` days after the first training: a level, or what it waits for. */
const said = (who: Who, kind: CheckKind, told: Told, n: number): string => {
  const view = buildView(lifeOf(who, told), evening(who.o + n), DEFAULT_LIMITS);
  const outcomes = about(kind).evaluate(view, DEFAULT_LIMITS);
  const flagged = outcomes.find(({ status }) => status === 'flagged');
  if (flagged?.status === 'flagged') return flagged.level;
  const waits = outcomes.find(({ status }) => status === 'not-enough-history');
  return waits?.status === 'not-enough-history' ? 'waits' : 'clear';
};
const sentence = (who: Who, kind: CheckKind, told: Told, n: number): string => {
  const view = buildView(lifeOf(who, told), evening(who.o + n), DEFAULT_LIMITS);
  const [found] = about(kind)
    .evaluate(view, DEFAULT_LIMITS)
    .flatMap((one) => (one.status === 'flagged' ? [one.sentence] : []));
  return found ?? '';
};
const everyDay = (who: Who, days: number, make: (n: number) => Partial<HistoryCheckIn> = () => ({})) =>
  Array.from({ length: days }, (_, n) => aCheckIn(who.o + n, make(n)));
const thrice = (who: Who, weeks: number, make: (n: number) => Partial<HistoryCheckIn> = () => ({})) =>
  threeAWeek(weeks, (n) => aCheckIn(who.o + n, make(n)));
const daysOf = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, at) => from + at);

describe.each(WHO)('in the first weeks of somebody $name', (who) => {
  const { o } = who;

  it('danger-sign and pain-high: from the first check-in', () => {
    const sign = { sign: 'swelling' as const, goneWithinMinute: false, region: null, side: null };
    expect(said(who, 'danger-sign', { checkIns: [aCheckIn(o, { dangerSigns: [sign] })] }, 0)).toBe('act');
    const sore = (value: number) => ({ checkIns: [aCheckIn(o, { pain: [aPain(value)] })] });
    expect([5, 6].map((value) => said(who, 'pain-high', sore(value), 0))).toEqual(['clear', 'act']);
  });

  it('too-hard: from the second training day of a rung', () => {
    const hard = (n: number) => aCheckIn(o + n, { sets: sets([5, 3, 2]) });
    expect(said(who, 'too-hard', { checkIns: [hard(0)] }, 0)).toBe('waits');
    expect(said(who, 'too-hard', { checkIns: [hard(0), hard(2)] }, 2)).toBe('watch');
  });

  it('plan-outgrown: from the third', () => {
    const plans = [aPlan({ from: day(o), items: [aPlanItem({ target: 3 })] })];
    const easy = (days: number[]) => ({
      plans,
      checkIns: days.map((n) => aCheckIn(o + n, { sets: sets([3, 3, 3], { planned: 3 }) })),
    });
    expect(said(who, 'plan-outgrown', easy([0, 2]), 2)).toBe('waits');
    expect(said(who, 'plan-outgrown', easy([0, 2, 4]), 4)).toBe('watch');
  });

  it('step-up-earned: from the first possible day; in the first 14 days it asks whether the rung is too low', () => {
    const told = { checkIns: thrice(who, 3) };
    expect(said(who, 'step-up-earned', told, 0)).toBe('waits');
    expect(said(who, 'step-up-earned', told, 2)).toBe('watch');
    expect(
      [2, 13, 14].map((n) => sentence(who, 'step-up-earned', told, n).includes('Placed too low?')),
    ).toEqual([true, true, false]);
  });

  it('load-jump, weeks 1-4: the told week alone, over 1.5 times, only a watch; nothing told: silent', () => {
    // 300 AU a session; three a week are 900 AU.
    const told = (toldWeekAu: number | null) => ({ client: { toldWeekAu }, checkIns: thrice(who, 5) });
    expect(said(who, 'load-jump', told(null), 20)).toBe('waits');
    expect([601, 600, 599, 200].map((au) => said(who, 'load-jump', told(au), 6))).toEqual([
      'clear',
      'clear',
      'watch',
      'watch',
    ]);
    // From day 29 on the own weeks decide: there are not enough of them yet.
    expect([27, 28].map((n) => said(who, 'load-jump', told(200), n))).toEqual(['watch', 'waits']);
  });

  it('load figures: exponentially weighted means from day 42', () => {
    const means = (n: number) => {
      const view = buildView(lifeOf(who, { checkIns: everyDay(who, 50) }), evening(o + n), DEFAULT_LIMITS);
      return loadFigures(view, loadsOf(view).session, DEFAULT_LIMITS).ewmaLong !== undefined;
    };
    expect([40, 41].map(means)).toEqual([false, true]);
  });

  it('new-hardest: off for 28 days; instead the start rule, two sets fewer', () => {
    const harder = aRung({ id: 'harder', ladderId: 'harder', weights: { 'elbow-bending': 1 } });
    const at = (n: number) => ({
      rungs: [aRung(), harder],
      checkIns: [
        ...thrice(who, 5).filter(({ date }) => date < day(o + n)),
        aCheckIn(o + n, { sets: sets([20], { rungId: 'harder' }) }),
      ],
    });
    expect([27, 28].map((n) => said(who, 'new-hardest', at(n), n))).toEqual(['waits', 'note']);
    expect(firstWeekOf({ sets: 5, target: 5, minutes: null }).sets).toBe(3);
  });

  it('stacked-stress and no-let-up: off for 28 days; under 18 the rest day from week 1', () => {
    const daily = (under18: boolean) => ({ client: { under18 }, checkIns: everyDay(who, 40) });
    expect([13, 27, 28].map((n) => said(who, 'no-let-up', daily(false), n))).toEqual([
      'waits',
      'waits',
      'watch',
    ]);
    expect([5, 6].map((n) => said(who, 'no-let-up', daily(true), n))).toEqual(['waits', 'watch']);
    const families = ['bent-arm-pull', 'bent-arm-push', 'straight-arm-push'] as const;
    const rungs = families.map((family) => aRung({ id: family, ladderId: family, family }));
    const rising = (last: number) => ({
      rungs,
      checkIns: daysOf(0, 9).map((at) =>
        aCheckIn(o + last - 27 + at * 3, {
          sets: rungs.flatMap(({ id }) => sets(Array<number>(at > 6 ? 6 : 3).fill(5), { rungId: id })),
        }),
      ),
    });
    expect(said(who, 'stacked-stress', rising(27), 27)).toBe('waits');
    expect(
      said(who, 'stacked-stress', { ...rising(28), checkIns: [aCheckIn(o), ...rising(28).checkIns] }, 28),
    ).toBe('watch');
  });

  it('stalled: the clock starts with the first training day here, 49 days and 8 training days', () => {
    const told = {
      rungs: [aRung({ pass: { sets: 1, target: 100, days: 2, tries: null } })],
      plans: [aPlan({ from: day(o), items: [aPlanItem({ sets: 1, target: 100 })] })],
      // Placed, in training two days later.
      checkIns: [
        aRestDay(o),
        ...thrice(who, 9, () => ({ sets: sets([78], { planned: 100 }) })).filter(({ date }) => date > day(o)),
      ],
    };
    const first = 2;
    expect([28, 48 + first, 49 + first].map((n) => said(who, 'stalled', told, n))).toEqual([
      'clear',
      'clear',
      'watch',
    ]);
    const seven = [2, 36, 41, 46, 51, 56, 60];
    const few = {
      ...told,
      checkIns: seven.map((n) => aCheckIn(o + n, { sets: sets([78], { planned: 100 }) })),
    };
    expect(said(who, 'stalled', few, 60)).toBe('waits');
  });

  it('slipping: silent until seven scores, whatever was before', () => {
    const told = (days: number[]) => ({
      rungs: [aRung({ pass: { sets: 1, target: 100, days: 2, tries: null } })],
      checkIns: days.map((n, at) =>
        aCheckIn(o + n, { sets: sets([at < days.length - 3 ? 80 : 60], { planned: 100 }) }),
      ),
    });
    expect(said(who, 'slipping', told([0, 3, 6, 20, 23, 26]), 26)).toBe('waits');
    expect(said(who, 'slipping', told([0, 3, 6, 9, 23, 26, 29]), 29)).toBe('watch');
  });

  it('side-gap and one-side-fault: silent until their counts; what start tests showed of sides is not judged', () => {
    const rungs = [
      aRung({
        measure: 'hold',
        eachSide: true,
        faults: ['hips-turn'],
        pass: { sets: 3, target: 30, days: 3, tries: null },
      }),
    ];
    const startTests = [{ id: 'tests', askedAt: `${day(o)}T08:00:00.000Z`, movedAt: null, doneAt: null }];
    const placements = (['left', 'right'] as const).map((side) => ({
      ladderId: 'pull',
      side,
      rungId: 'pull-1',
      from: day(o),
    }));
    const pairs = (count: number) => ({
      rungs,
      placements,
      startTests,
      checkIns: daysOf(0, count - 1).map((at) =>
        aCheckIn(o + at * 2, {
          sets: [
            aSet({ side: 'left', value: 14, planned: 30 }),
            aSet({ side: 'right', value: 20, planned: 30 }),
          ],
        }),
      ),
    });
    expect([0, 5, 6].map((count) => said(who, 'side-gap', pairs(count), 12))).toEqual([
      'waits',
      'waits',
      'act',
    ]);
    const faulty = (count: number) => ({
      rungs,
      placements,
      checkIns: daysOf(0, count - 1).map((at) =>
        aCheckIn(o + at * 2, {
          sets: [aSet({ side: 'left', faults: ['hips-turn'] }), aSet({ side: 'right' })],
        }),
      ),
    });
    expect([7, 8].map((count) => said(who, 'one-side-fault', faulty(count), 16))).toEqual(['waits', 'watch']);
  });

  it('window-gap: from five holds of each', () => {
    const of = (id: string, ladder: string, part: string) =>
      aRung({ id, ladderId: id, ladder, name: ladder, part, family: 'balance', measure: 'hold' });
    const rungs = [
      of('heel', 'Heel pull, back to wall', 'Over-balance'),
      of('toe', 'Toe pull, chest to wall', 'Under-balance'),
    ];
    const told = (count: number) => ({
      rungs,
      checkIns: daysOf(0, count - 1).map((at) =>
        aCheckIn(o + at * 2, { sets: [...sets([15], { rungId: 'heel' }), ...sets([8], { rungId: 'toe' })] }),
      ),
    });
    expect([4, 5].map((count) => said(who, 'window-gap', told(count), 10))).toEqual(['waits', 'watch']);
  });

  it('too-little-time: from day 21; week 1 of a new plan never counts', () => {
    const told = { checkIns: [aCheckIn(o), ...thrice(who, 4, () => ({ sets: [] })).slice(1)] };
    expect([19, 20].map((n) => said(who, 'too-little-time', told, n))).toEqual(['waits', 'watch']);
    const changed = {
      ...told,
      plans: [aPlan({ from: day(o), items: [] }), aPlan({ version: 2, from: day(o + 20) })],
    };
    expect(said(who, 'too-little-time', changed, 26)).toBe('waits');
  });

  it('gone-quiet: five days in the first month, seven after it', () => {
    const told = (last: number) => ({ checkIns: thrice(who, 8).filter(({ date }) => date <= day(o + last)) });
    expect([4, 5].map((n) => said(who, 'gone-quiet', told(11), 11 + n))).toEqual(['clear', 'watch']);
    expect([5, 6, 7].map((n) => said(who, 'gone-quiet', told(32), 32 + n))).toEqual([
      'clear',
      'clear',
      'watch',
    ]);
  });

  it('fading: off for 56 days', () => {
    const told = { checkIns: thrice(who, 5) };
    expect([54, 55].map((n) => said(who, 'fading', told, n))).toEqual(['waits', 'watch']);
  });

  it('not-seen: seven days in the first month, fourteen after it', () => {
    const looked = (n: number) => ({ checkIns: thrice(who, 7), seen: [`${day(o + n)}T08:00:00.000Z`] });
    expect([6, 7].map((n) => said(who, 'not-seen', looked(0), n))).toEqual(['clear', 'watch']);
    expect([13, 14].map((n) => said(who, 'not-seen', looked(28), 28 + n))).toEqual(['clear', 'watch']);
  });

  it('too-many-goals: on the plan from the first save', () => {
    const plans = [aPlan({ from: day(o + 7), skillsInFocus: ['Handstand', 'Planche', 'Pull-up'] })];
    expect(said(who, 'too-many-goals', { plans }, 0)).toBe('watch');
  });

  it('question-waiting and film-waiting: from the start', () => {
    const at = `${day(o)}T02:00:00.000Z`;
    const questions = [{ id: 'q', askedAt: at, text: 'How wide?', answeredAt: null, answer: null }];
    const films = [{ id: 'f', askedAt: at, receivedAt: at, lookedAt: null, words: '' }];
    const told = { questions, films, checkIns: [aCheckIn(o)] };
    expect(said(who, 'question-waiting', told, 0)).toBe('watch');
    expect(said(who, 'film-waiting', told, 0)).toBe('watch');
  });
});

describe('what hangs on the start itself', () => {
  it('pain-rising: three over the value at intake until there are four check-ins', () => {
    const told = (values: number[], intake = 1) => ({
      client: {
        intakePain:
          intake === 0
            ? []
            : [{ region: 'elbow-inner' as const, side: 'right' as const, value: intake, sinceWeeks: 1 }],
      },
      checkIns: values.map((value, at) => aCheckIn(at * 2, { pain: [aPain(value)] })),
    });
    expect([3, 4].map((value) => said(NEW, 'pain-rising', told([value]), 0))).toEqual(['waits', 'watch']);
    expect([2, 3].map((value) => said(NEW, 'pain-rising', told([value], 0), 0))).toEqual(['waits', 'watch']);
    // Four known: what is above usual + 1 adds up to 5.
    expect(said(NEW, 'pain-rising', told([1, 1, 4, 4]), 6)).toBe('clear');
    expect(said(NEW, 'pain-rising', told([1, 4, 4, 4]), 6)).toBe('watch');
  });

  it('pain-lingering: from day 1 when intake says 3 and more for three weeks and more', () => {
    const told = (value: number, sinceWeeks: number) => ({
      client: { intakePain: [{ region: 'elbow-inner' as const, side: 'right' as const, value, sinceWeeks }] },
    });
    expect(said(NEW, 'pain-lingering', told(3, 3), 0)).toBe('watch');
    expect(sentence(NEW, 'pain-lingering', told(3, 3), 0)).toContain('sore since before the start');
    expect(said(NEW, 'pain-lingering', told(2, 3), 0)).not.toBe('watch');
    expect(said(NEW, 'pain-lingering', told(3, 2.9), 0)).not.toBe('watch');
  });

  it('return-too-fast: no training for three weeks or more before the start is a return from week 1', () => {
    const told = (breakWeeks: number, plans = [aPlan()]) => ({
      client: { breakWeeks, toldWeekAu: 900 },
      plans,
      checkIns: thrice(NEW, 3),
    });
    expect([2.9, 3].map((weeks) => said(NEW, 'return-too-fast', told(weeks, []), 0))).toEqual([
      'clear',
      'watch',
    ]);
    expect(sentence(NEW, 'return-too-fast', told(3, []), 0)).toContain('no plan is written');
    // 300 AU a session: half of the told week is 450 AU, passed on the third day.
    expect([0, 2, 4].map((n) => said(NEW, 'return-too-fast', told(4), n))).toEqual(['clear', 'watch', 'act']);
    expect([13, 14].map((n) => said(NEW, 'return-too-fast', told(4), n))).toEqual(['act', 'clear']);
  });

  it('gone-quiet: never came in three days after the invitation, never started four after the first planned day', () => {
    const invited = { plans: [], client: { standing: 'invited' as const, joinedAt: null } };
    expect([2, 3].map((n) => said(NEW, 'gone-quiet', invited, n))).toEqual(['clear', 'watch']);
    const joined = { plans: [aPlan({ from: day(2) })] };
    expect([5, 6].map((n) => said(NEW, 'gone-quiet', joined, n))).toEqual(['clear', 'watch']);
    expect(said(NEW, 'gone-quiet', { plans: [] }, 30)).toBe('clear');
  });

  it('forecast: the usual times of the ladder alone, until two rungs were passed here', () => {
    const rungs = [1, 2, 3, 4].map((position) => aRung({ id: `pull-${position}`, position, usualWeeks: 4 }));
    const on = (at: [number, number][]) => {
      const placements = at.map(([rung, n]) => ({
        ladderId: 'pull',
        side: 'both' as const,
        rungId: `pull-${rung}`,
        from: day(n),
      }));
      const view = buildView(aHistory({ rungs, placements }), evening(60), DEFAULT_LIMITS);
      const [standing] = standingsOf(view);
      return standing && forecast(view, standing, rungs, DEFAULT_LIMITS)?.usualOnly;
    };
    expect(on([[1, 0]])).toBe(true);
    expect(
      on([
        [1, 0],
        [2, 20],
      ]),
    ).toBe(true);
    expect(
      on([
        [1, 0],
        [2, 20],
        [3, 40],
      ]),
    ).toBe(false);
  });

  it('the plan editor holds a first plan against the told week at once', () => {
    const client = { toldWeekAu: 300, toldEffort: 6 };
    const plan = (sets: number) =>
      aPlan({
        from: day(1),
        sessionsPerWeek: 3,
        items: [aPlanItem({ sets, minutes: null, timesPerWeek: 3 })],
      });
    const warned = (sets: number) =>
      projectLoads({
        history: aHistory({ client, plans: [] }),
        plan: plan(sets),
        date: day(0),
        rungs: [aRung()],
      }).warnings.map(({ kind, weeks }) => `${kind} ${weeks.join(' ')}`);
    expect(warned(3)).toEqual([]);
    // The last evening of the fourth week is the 29th day here: its own weeks decide by then.
    expect(warned(16)).toEqual(['load-jump 1 2 3']);
  });

  it('the history before a return stays: its break is seen, and what it was before', () => {
    const view = buildView(lifeOf(BACK, { checkIns: thrice(BACK, 1) }), evening(BACK.o + 4), DEFAULT_LIMITS);
    const [returned] = about('return-too-fast').evaluate(view, DEFAULT_LIMITS);
    expect(returned).toMatchObject({ status: 'flagged', evidence: { breakDays: 114 } });
    expect(view.days.length).toBeGreaterThan(BACK.o);
  });

  it('what was usual before the break is no usual any more', () => {
    const told = { checkIns: thrice(BACK, 1, () => ({ effort: 8, sets: sets([5, 5, 5, 5, 5, 5]) })) };
    const view = buildView(lifeOf(BACK, told), evening(BACK.o + 4), DEFAULT_LIMITS);
    const [drill] = drillsOf(view);
    const rule = { days: 2, before: 10, beforeAtLeast: 1, each: 1.5, mean: 1.6, within: 16 };
    // One day of six sets in this life here: two more of six are no more than usual.
    expect(drill && moreSets(view, drill, rule)).toBeUndefined();
    expect(biggerSessions(view, DEFAULT_LIMITS)).toBeUndefined();
  });

  it('who was not placed anew stands on the old rung since the return', () => {
    const told = {
      rungs: [aRung({ pass: { sets: 1, target: 100, days: 2, tries: null } })],
      placements: [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(0) }],
      plans: [aPlan({ items: [aPlanItem({ sets: 1, target: 100 })] })],
      checkIns: thrice(BACK, 9, () => ({ sets: sets([78], { planned: 100 }) })),
    };
    expect([48, 49].map((n) => said(BACK, 'stalled', told, n))).toEqual(['clear', 'watch']);
  });

  it.each([
    [83, 30],
    [84, 0],
  ])('after %i days away the first weeks begin again: day %i of them', (away, first) => {
    // Trained last on day 53.
    const last = 53;
    const o = last + away + 1;
    const told = aHistory({ checkIns: [...threeAWeek(8), aCheckIn(o)] });
    const view = buildView(told, evening(o), DEFAULT_LIMITS);
    const [hard] = about('new-hardest').evaluate(view, DEFAULT_LIMITS);
    expect(hard?.status === 'not-enough-history').toBe(first === 0);
  });
});
