import { expect, it } from 'vitest';
import { CHECKS } from '#lib/checks/registry.ts';
import { kindOfLimit, kindsReading } from '#lib/checks/replay/kinds-reading.ts';
import { settle } from '#lib/checks/settle.ts';
import { boundsOf } from '#lib/checks/thresholds/bounds.ts';
import { DEFAULT_LIMITS, isLimitId, type LimitId, THRESHOLDS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { addDays } from '#tests/bench/detect/calendar.ts';
import { FIRST_DAY, makeClient } from '#tests/bench/detect/generator.ts';
import { PLANTED } from '#tests/bench/detect/planted.ts';
import { WORLDS } from '#tests/bench/detect/worlds.ts';

const ids = Object.keys(THRESHOLDS).filter(isLimitId);

it('names every kind that reads a number, as the rules themselves read it', () => {
  const reads = new Map<LimitId, Set<string>>();
  let reading = '';
  const watched = new Proxy(DEFAULT_LIMITS, {
    get(limits, id: LimitId) {
      reads.set(id, (reads.get(id) ?? new Set()).add(reading));
      return limits[id];
    },
  });
  PLANTED.forEach((planted, index) => {
    const world = WORLDS[index % WORLDS.length];
    if (!world) throw new Error('no world');
    const { history } = makeClient(world, planted.name, index + 1, 250);
    const young = { ...history, client: { ...history.client, under18: index % 2 === 0 } };
    for (let day = 12; day < 250; day += 34) {
      const asOf = { date: addDays(FIRST_DAY, day), instant: `${addDays(FIRST_DAY, day + 1)}T02:00:00.000Z` };
      const outcomes = CHECKS.flatMap((check) => {
        reading = 'the view';
        const view = buildView(young, asOf, watched);
        reading = check.kind;
        return check.evaluate(view, watched);
      });
      reading = 'settle';
      settle(buildView(young, asOf, DEFAULT_LIMITS), outcomes, watched);
    }
  });
  expect(reads.size).toBeGreaterThan(120);
  for (const [id, readers] of reads) {
    const { touched, shared } = kindsReading([id]);
    const named = [
      ...touched,
      ...(shared && touched.length === CHECKS.length ? ['the view'] : []),
      // What is settled reads how sore a loaded place is: for load jumps only.
      ...(touched.includes('load-jump') ? ['settle'] : []),
      ...(boundsOf(id).kept === undefined ? [] : ['settle', ...CHECKS.map(({ kind }) => kind), 'the view']),
    ];
    const unnamed = [...readers].filter((reader) => !named.includes(reader));
    expect([id, unnamed]).toEqual([id, []]);
  }
});

it('takes what all checks read as read by all, and what some read as read by those', () => {
  expect(kindsReading(['day.restGapDays'])).toMatchObject({
    shared: true,
    touched: { length: CHECKS.length },
  });
  expect(kindsReading(['week.usualOf'])).toMatchObject({ shared: false, heldBack: { length: 9 } });
  expect(kindsReading(['reason.clearNights'])).toMatchObject({
    touched: [],
    settled: { length: CHECKS.length },
  });
  expect(kindsReading(['planEnding.days'])).toEqual({
    touched: ['plan-ending'],
    settled: ['plan-ending'],
    heldBack: [],
    shared: false,
  });
});

it('asks what may be merged with what is touched, and what holds good news back', () => {
  const pain = kindsReading(['painLingering.share']);
  expect(pain.settled).toEqual([
    'danger-sign',
    'pain-high',
    'pain-rising',
    'pain-lingering',
    'pain-after-ground',
  ]);
  expect(pain.heldBack).toEqual(expect.arrayContaining(['load-jump', 'step-up-earned']));
  expect(kindsReading(['stepUpEarned.maxPain'])).toMatchObject({ heldBack: [], touched: ['step-up-earned'] });
  expect(kindsReading(['stepUpEarned.maxPain']).settled).toHaveLength(9);
});

it('knows the kind of every number of a kind', () => {
  const own = new Set(ids.flatMap((id) => kindOfLimit(id) ?? []));
  const without = CHECKS.map(({ kind }) => kind).filter((kind) => !own.has(kind));
  expect(without).toEqual([]);
});
