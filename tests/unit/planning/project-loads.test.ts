import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadFigures } from '#lib/checks/load-figures.ts';
import { loadsOf } from '#lib/checks/load-series.ts';
import { loadJump } from '#lib/checks/rules/load-jump.ts';
import { stackedStress } from '#lib/checks/rules/stacked-stress.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { spreadOf } from '#lib/checks/usual-week.ts';
import { buildView } from '#lib/checks/view.ts';
import type {
  ClientHistory,
  HistoryCheckIn,
  HistoryLimit,
  HistoryRung,
  HistorySet,
} from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { FAMILIES, TISSUES } from '#lib/domain/vocabulary.ts';
import type { EditedItem, EditedPlan } from '#lib/planning/edited-plan.ts';
import { planCalendar } from '#lib/planning/plan-calendar.ts';
import { projectLoads } from '#lib/planning/project-loads.ts';
import {
  aCheckIn,
  aHistory,
  aPlan,
  aPlanItem,
  aRestDay,
  aRung,
  aSet,
  day,
  START,
  sets,
  threeAWeek,
} from '#tests/fixtures/history-builders.ts';

const HANDSTAND = aRung({
  id: 'stand-1',
  ladderId: 'stand',
  ladder: 'Handstand',
  skill: 'Handstand',
  part: 'Balance',
  name: 'Heel pull',
  family: 'balance',
  measure: 'hold',
  secondsPerRep: null,
  weights: { 'wrist-back': 0.9, 'shoulder-overhead': 0.5 },
});

/** Twelve weeks, three sessions each and every other day told as rest; the last evening is a Sunday. */
const WEEKS = 12;
const LAST = WEEKS * 7 - 1;
function logged(make?: (days: number) => HistoryCheckIn): HistoryCheckIn[] {
  const trained = threeAWeek(WEEKS, make);
  const dates = new Set(trained.map((one) => one.date));
  const rest = Array.from({ length: LAST + 1 }, (_, days) => days).filter((days) => !dates.has(day(days)));
  return [...trained, ...rest.map((days) => aRestDay(days))];
}

describe('the loads of the next four weeks', () => {
  it('come to the usual week when the plan asks what was always done', () => {
    const history = aHistory({ checkIns: logged() });
    const projection = projectLoads({ history, plan: aPlan({ from: day(LAST + 1) }), date: day(LAST) });
    // 3 sessions x 3 sets x 5 reps x 4 s, half the body weight on each hand, weight 0.8: 72 BW s a week.
    const elbow = projection.tissues.find((one) => one.tissue === 'elbow-bending' && one.side === 'left');
    expect(elbow?.weeks.map((load) => Math.round(load * 1e6) / 1e6)).toEqual([72, 72, 72, 72]);
    expect(elbow?.usual?.usual).toBeCloseTo(72, 9);
    expect(elbow?.usual?.spread).toBeCloseTo(0, 9);
    expect(projection.session.usual?.usual).toBe(900);
    expect(projection.session.weeks.map((load) => Math.round(load ?? 0))).toEqual([900, 900, 900, 900]);
    expect(projection.warnings).toEqual([]);
  });

  it('names the same tissues and sides as the checks, in their order', () => {
    const history = aHistory({ checkIns: logged() });
    const { tissues } = projectLoads({ history, plan: aPlan({ from: day(LAST + 1) }), date: day(LAST) });
    expect(tissues.map(({ tissue, side }) => `${tissue} ${side}`)).toEqual([
      'elbow-bending left',
      'elbow-bending right',
      'upper-back left',
      'upper-back right',
    ]);
  });

  it('halves the sets in an easy week and keeps the rungs', () => {
    const history = aHistory({ checkIns: logged() });
    const plan = aPlan({
      from: day(LAST + 1),
      easyWeeks: [day(LAST + 8)],
      items: [aPlanItem({ sets: 4 })],
    });
    const { tissues, weeks } = projectLoads({ history, plan, date: day(LAST) });
    expect(weeks.map((week) => week.kind)).toEqual(['ordinary', 'easy', 'ordinary', 'ordinary']);
    expect(tissues[0]?.weeks.map(Math.round)).toEqual([96, 48, 96, 96]);
  });

  it('obeys a limit on its side until its last day', () => {
    const limit: HistoryLimit = {
      tissue: 'elbow-bending',
      region: null,
      side: 'left',
      rule: 'none',
      percent: null,
      from: day(LAST - 3),
      until: day(LAST + 7),
      who: 'coach',
    };
    const each = aRung({ eachSide: true, helpingShare: 0 });
    const history = aHistory({ rungs: [each], checkIns: logged(), limits: [limit] });
    const { tissues } = projectLoads({ history, plan: aPlan({ from: day(LAST + 1) }), date: day(LAST) });
    const of = (side: string) =>
      tissues.find((one) => one.tissue === 'elbow-bending' && one.side === side)?.weeks.map(Math.round);
    expect(of('left')).toEqual([0, 144, 144, 144]);
    expect(of('right')).toEqual([144, 144, 144, 144]);
  });

  it('lets the plan before go on until the edited one starts', () => {
    const history = aHistory({ rungs: [aRung(), HANDSTAND], checkIns: logged() });
    const plan = aPlan({
      from: day(LAST + 15),
      items: [aPlanItem({ rungId: 'stand-1', sets: 2, target: 10 })],
    });
    const { tissues } = projectLoads({ history, plan, date: day(LAST) });
    const of = (tissue: string) => tissues.find((one) => one.tissue === tissue)?.weeks.map(Math.round);
    expect(of('elbow-bending')).toEqual([72, 72, 0, 0]);
    expect(of('wrist-back')).toEqual([0, 0, 27, 27]);
  });

  it('has no session on days off and none after the last planned day', () => {
    const history = aHistory({
      checkIns: logged(),
      absences: [{ from: day(LAST + 1), to: day(LAST + 7), kind: 'holiday' }],
    });
    const plan = aPlan({ from: day(LAST + 1), until: day(LAST + 14) });
    const { weeks, tissues } = projectLoads({ history, plan, date: day(LAST) });
    expect(weeks.map((week) => week.sessions)).toEqual([0, 3, 0, 0]);
    expect(tissues[0]?.weeks.map(Math.round)).toEqual([0, 72, 0, 0]);
  });

  it('counts the support a line names: bars take most of the bend out of the wrist', () => {
    const history = aHistory({ rungs: [HANDSTAND], checkIns: [] });
    const item: EditedItem = aPlanItem({ rungId: 'stand-1', sets: 2, target: 10 });
    const wrist = (support: EditedItem['support']) => {
      const plan: EditedPlan = { ...aPlan({ from: day(1) }), items: [{ ...item, support }] };
      const { tissues } = projectLoads({ history, plan, date: day(0) });
      return tissues.find((one) => one.tissue === 'wrist-back')?.weeks[0];
    };
    expect(wrist(null)).toBeCloseTo(27, 9);
    expect(wrist('parallel-bars')).toBeCloseTo(27 * 0.25, 9);
  });

  it('knows no session load where no session was ever told, and says no usual week', () => {
    const { session, assumed, tissues } = projectLoads({
      history: aHistory(),
      plan: aPlan({ from: day(1) }),
      date: day(0),
    });
    expect(session).toEqual({ weeks: [null, null, null, null], usual: null });
    expect(assumed).toEqual({ effort: null, pace: null });
    expect(tissues.every((one) => one.usual === null)).toBe(true);
  });

  it('reads a plan on rungs the history does not carry yet', () => {
    const history = aHistory({ checkIns: logged() });
    const plan = aPlan({ from: day(LAST + 1), items: [aPlanItem({ rungId: 'stand-1', target: 10 })] });
    const { parts, tissues } = projectLoads({ history, plan, date: day(LAST), rungs: [HANDSTAND] });
    expect(parts).toEqual([{ skill: 'Handstand', part: 'Balance', drills: ['Handstand'] }]);
    expect(tissues.some((one) => one.tissue === 'wrist-back' && (one.weeks[0] ?? 0) > 0)).toBe(true);
  });

  it('says a jump in the words of the check, once, with the weeks', () => {
    const history = aHistory({ checkIns: logged() });
    const plan = aPlan({ from: day(LAST + 1), items: [aPlanItem({ sets: 9 })] });
    const { warnings } = projectLoads({ history, plan, date: day(LAST) });
    expect(warnings).toHaveLength(1);
    expect(warnings[0]).toMatchObject({ kind: 'load-jump', level: 'act' });
    expect(warnings[0]?.weeks[0]).toBe(1);
    expect(warnings[0]?.sentence).toBe(
      'Done as planned, by Sun 31 May: the week is **3 × usual** (2,700 AU against 900) because the last 3 sessions were all bigger.',
    );
  });

  it('takes the pace of this client from sessions with their own rest and warm-up', () => {
    const sessions = [{ label: 'A', restSeconds: 35, warmUpMinutes: 9 }];
    const history = aHistory({ plans: [{ ...aPlan(), sessions }], checkIns: logged() });
    const plan = { ...aPlan({ from: day(LAST + 1) }), sessions };
    const { assumed, session } = projectLoads({ history, plan, date: day(LAST) });
    // 3 x (20 + 5 + 35) s and 9 min are 12 min, told as 60
    expect(assumed).toEqual({ effort: 5, pace: 5 });
    expect(session.weeks.map((load) => Math.round(load ?? 0))).toEqual([900, 900, 900, 900]);
  });

  it('is silent about a jump that the coach accepted in the plan', () => {
    const history = aHistory({ checkIns: logged() });
    const plan = aPlan({ from: day(LAST + 1), acceptedWeekAu: 2_700, items: [aPlanItem({ sets: 9 })] });
    expect(projectLoads({ history, plan, date: day(LAST) }).warnings).toEqual([]);
  });

  it('is quick enough to follow typing', () => {
    const history = aHistory({ checkIns: logged() });
    const plan = aPlan({ from: day(LAST + 1) });
    projectLoads({ history, plan, date: day(LAST) });
    const times = Array.from({ length: 20 }, () => {
      const started = performance.now();
      projectLoads({ history, plan, date: day(LAST) });
      return performance.now() - started;
    });
    // The fastest: what else the machine does is not asked here.
    expect(Math.min(...times)).toBeLessThan(40);
  });
});

const rungs = fc
  .array(
    fc.record({
      family: fc.constantFrom(...FAMILIES),
      measure: fc.constantFrom('hold' as const, 'reps' as const, 'lowering' as const, 'made-tried' as const),
      eachSide: fc.boolean(),
      helpingShare: fc.constantFrom(null, 0.2),
      share: fc.constantFrom(null, 0.5, 1),
      weights: fc.dictionary(fc.constantFrom(...TISSUES), fc.double({ min: 0.05, max: 1, noNaN: true })),
    }),
    { minLength: 2, maxLength: 5 },
  )
  .map((made) =>
    made.map(
      (one, index): HistoryRung =>
        aRung({
          ...one,
          id: `rung-${index}`,
          ladderId: `ladder-${index}`,
          ladder: `Drill ${index}`,
          pass: { sets: 3, target: 5, days: 2, tries: 8 },
        }),
    ),
  );

const plans = (known: HistoryRung[]) =>
  fc.record({
    perWeek: fc.integer({ min: 1, max: 6 }),
    easy: fc.option(fc.integer({ min: 0, max: 3 })),
    items: fc.uniqueArray(
      fc.record({
        session: fc.constantFrom('A', 'B'),
        rung: fc.constantFrom(...known),
        side: fc.constantFrom('both' as const, 'left' as const, 'right' as const),
        sets: fc.integer({ min: 1, max: 9 }),
        target: fc.option(fc.integer({ min: 1, max: 30 })),
        timesPerWeek: fc.constantFrom(0.5, 1, 2, 3),
        support: fc.constantFrom(null, 'parallel-bars' as const, 'wedge' as const),
      }),
      { minLength: 1, maxLength: 6, selector: ({ session, rung }) => `${session} ${rung.id}` },
    ),
  });

const cases = rungs.chain((known) =>
  fc.record({
    known: fc.constant(known),
    plan: plans(known),
    past: fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 36, maxLength: 36 }),
    limit: fc.option(
      fc.record({
        tissue: fc.constantFrom(...TISSUES),
        side: fc.constantFrom(null, 'left' as const, 'right' as const),
        percent: fc.constantFrom(0, 40, 60),
        days: fc.integer({ min: 0, max: 30 }),
      }),
    ),
  }),
);

describe('the projection, once the weeks have happened exactly as planned', () => {
  it('is what the checks compute, for random plans, limits and pasts', () => {
    fc.assert(
      fc.property(cases, ({ known, plan: made, past, limit }) => {
        const items = made.items.map(
          ({ rung, ...item }): EditedItem => ({
            ...item,
            rungId: rung.id,
            side: rung.eachSide ? item.side : 'both',
            minutes: null,
          }),
        );
        const plan: EditedPlan = {
          ...aPlan({ from: day(LAST + 1), sessionsPerWeek: made.perWeek }),
          easyWeeks: made.easy === null ? [] : [day(LAST + 1 + made.easy * 7)],
          items,
          version: 2,
        };
        const history = pastOf(known, past, limit);
        const projection = projectLoads({ history, plan, date: day(LAST) });
        const effort = projection.assumed.effort ?? 0;
        const happened = { ...history, plans: [...history.plans, plan], checkIns: [...history.checkIns] };
        happened.checkIns.push(...asPlanned(plan, known, history.limits, effort));

        projection.weeks.forEach((week, index) => {
          const evening = { date: day(LAST + 7 * (index + 1)), instant: `${week.until}T23:00:00.000Z` };
          const view = buildView(happened, evening, DEFAULT_LIMITS);
          for (const [key, series] of loadsOf(view).tissues) {
            const foreseen = projection.tissues.find((one) => `${one.tissue}:${one.side}` === key);
            const figures = loadFigures(view, series, DEFAULT_LIMITS);
            expect(foreseen?.weeks[index] ?? 0).toBeCloseTo(figures.week.total, 6);
            if (index > 0 || !foreseen) continue;
            const { usual } = figures;
            expect(foreseen.usual?.usual ?? null).toEqual(usual.enough ? usual.usual : null);
            expect(foreseen.usual?.spread ?? null).toEqual(usual.enough ? spreadOf(usual) : null);
          }
          const session = loadFigures(view, loadsOf(view).session, DEFAULT_LIMITS).week;
          expect(projection.session.weeks[index]).toBeCloseTo(session.total, 6);
          const stacked = stackedStress.evaluate(view, DEFAULT_LIMITS)[0];
          const said = projection.warnings.find((one) => one.kind === 'stacked-stress');
          expect(said?.weeks.includes(index + 1) ?? false).toBe(stacked?.status === 'flagged');
          if (stacked?.status === 'flagged' && said?.weeks[0] === index + 1)
            expect(said.sentence).toContain(stacked.sentence.replace(/^The /, 'the '));
          const jump = loadJump.evaluate(view, DEFAULT_LIMITS)[0];
          const jumps = projection.warnings.find((one) => one.kind === 'load-jump');
          expect(jumps?.weeks.includes(index + 1) ?? false).toBe(jump?.status === 'flagged');
        });
      }),
      { numRuns: 60, seed: 20261125 },
    );
  });
});

/** Twelve weeks of three sessions of every rung, as many sets as told. */
function pastOf(
  known: HistoryRung[],
  past: number[],
  limit: { tissue: HistoryLimit['tissue']; side: HistoryLimit['side']; percent: number; days: number } | null,
): ClientHistory {
  const make = (days: number, session: number) =>
    aCheckIn(days, {
      sets: known.flatMap((rung) =>
        sets(new Array(past[session] ?? 1).fill(5), { rungId: rung.id, tried: rung.pass.tries }),
      ),
    });
  const checkIns = threeAWeek(WEEKS, make);
  const dates = new Set(checkIns.map((one) => one.date));
  for (let days = 0; days <= LAST; days += 1) if (!dates.has(day(days))) checkIns.push(aRestDay(days));
  const limits: HistoryLimit[] = limit
    ? [
        {
          tissue: limit.tissue,
          region: null,
          side: limit.side,
          rule: 'reduced',
          percent: limit.percent,
          from: START,
          until: day(LAST + limit.days),
          who: 'coach',
        },
      ]
    : [];
  return aHistory({ rungs: known, plans: [aPlan({ items: [] })], placements: [], checkIns, limits });
}

/** The four weeks as a client who does just what the plan says would send them; written apart from the product. */
function asPlanned(
  plan: EditedPlan,
  known: HistoryRung[],
  limits: HistoryLimit[],
  effort: number,
): HistoryCheckIn[] {
  const dates = Array.from({ length: 28 }, (_, index) => addDays(day(LAST), index + 1));
  const sessions = planCalendar(dates, () => plan);
  return dates.flatMap((date) => {
    const days = LAST + 1 + dates.indexOf(date);
    const here = sessions.filter((session) => session.date === date);
    if (here.length === 0) return [aRestDay(days)];
    return here.map((session) =>
      aCheckIn(days, {
        session: session.label,
        effort,
        minutes: minutesOf(session.items, known, plan, limits, date),
        sets: session.items.flatMap((item) => setsOf(item, known, plan, limits, date)),
      }),
    );
  });
}

function setsOf(
  item: EditedItem,
  known: HistoryRung[],
  plan: EditedPlan,
  limits: HistoryLimit[],
  date: string,
): HistorySet[] {
  const rung = known.find((one) => one.id === item.rungId);
  if (!rung) return [];
  const sides = rung.eachSide && item.side === 'both' ? (['left', 'right'] as const) : [item.side];
  return sides.flatMap((side) => {
    const count = left(item, side, rung, plan, limits, date);
    return Array.from({ length: count }, (_, index) =>
      aSet({
        rungId: rung.id,
        side,
        index,
        value: item.target ?? rung.pass.target,
        tried: rung.measure === 'made-tried' ? rung.pass.tries : null,
        how: 'as-planned',
        support: item.support ?? null,
      }),
    );
  });
}

function left(
  item: EditedItem,
  side: string,
  rung: HistoryRung,
  plan: EditedPlan,
  limits: HistoryLimit[],
  date: string,
): number {
  const isEasy = plan.easyWeeks.some((week) => week <= date && date < addDays(week, 7));
  const count = isEasy ? Math.ceil(item.sets / 2) : item.sets;
  const [limit] = limits.filter((one) => one.until === null || one.until >= date);
  if (!limit?.tissue) return count;
  const weights: Record<string, number> = { ...rung.weights };
  const wrist = { bars: 0.25, wedge: 0.75, none: 1 }[
    item.support === 'parallel-bars' ? 'bars' : item.support === 'wedge' ? 'wedge' : 'none'
  ];
  if (weights['wrist-back'] !== undefined) weights['wrist-back'] *= wrist;
  if (item.support === 'parallel-bars')
    weights['wrist-forward'] = Math.min(1, (weights['wrist-forward'] ?? 0) + 0.15);
  const touched =
    (weights[limit.tissue] ?? 0) >= 0.3 && (limit.side === null || side === 'both' || limit.side === side);
  if (!touched) return count;
  const percent = limit.percent ?? 0;
  return percent === 0 ? 0 : Math.max(1, Math.round((count * percent) / 100));
}

/** The estimate of a session: work, 5 s to settle and the rest of its family, each set of each side; at its own pace 1. */
function minutesOf(
  items: EditedItem[],
  known: HistoryRung[],
  plan: EditedPlan,
  limits: HistoryLimit[],
  date: string,
): number {
  let seconds = 0;
  for (const item of items) {
    const rung = known.find((one) => one.id === item.rungId);
    if (!rung) continue;
    const rest = rung.family === 'mobility' ? 30 : rung.family === 'balance' ? 60 : 120;
    for (const set of setsOf(item, known, plan, limits, date)) {
      const value = set.tried ?? set.value ?? 0;
      const timed = rung.measure === 'hold' || rung.measure === 'lowering';
      seconds += (timed ? value : value * (rung.secondsPerRep ?? 0)) + 5 + rest;
    }
  }
  return seconds / 60;
}
