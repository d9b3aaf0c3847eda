import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { ClientHistory, HistoryCheckIn, HistorySet } from '#lib/domain/history.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { clientPage, pageDate } from '#lib/views/client-page.ts';
import { RUNG, sampleCheckIn, sampleHistory } from '#tests/fixtures/sample-history.ts';

const LAST = '2026-06-28';
const NOW = new Date('2026-06-29T06:40:00.000Z');
const EACH = {
  ...RUNG,
  id: 'rung-2',
  ladderId: 'ladder-2',
  ladder: 'One-arm hang',
  name: 'one-arm hang',
  measure: 'hold' as const,
  eachSide: true,
  helpingShare: 0,
  secondsPerRep: null,
  pass: { sets: 1, target: 20, days: 2, tries: null },
};

const hold = (side: 'left' | 'right', value: number): HistorySet => ({
  rungId: EACH.id,
  side,
  index: 0,
  planned: 20,
  value,
  tried: null,
  how: 'timed',
  clean: true,
  faults: [],
  support: null,
  addedKg: null,
});

/** Every second day for 84 days up to LAST: effort 6 x 60 minutes. */
function everySecondDay(change: (at: number) => Partial<HistoryCheckIn> | null): HistoryCheckIn[] {
  return Array.from({ length: 42 }, (_, index) => 1 + 2 * index).flatMap((at) => {
    const over = change(at);
    return over ? [sampleCheckIn({ id: `c-${at}`, date: addDays(LAST, at - 83), ...over })] : [];
  });
}

function pageOf(over: Partial<ClientHistory>) {
  const history = sampleHistory({ rungs: [RUNG, EACH], absences: [], ...over });
  const view = buildView(history, { date: LAST, instant: NOW.toISOString() });
  return clientPage({
    view,
    limits: DEFAULT_LIMITS,
    reasons: [],
    ladderRungs: [],
    seen: [],
    goal: 'Chest-to-bar',
    now: NOW,
  });
}

test('the axis has twelve blocks of seven days that end on the last day, months named where they begin', () => {
  const { axis } = pageOf({ checkIns: everySecondDay(() => ({})) });
  expect([axis.from, axis.to]).toEqual(['2026-04-06', LAST]);
  expect(axis.ticks.map((tick) => tick.at)).toEqual([0, 7, 14, 21, 28, 35, 42, 49, 56, 63, 70, 77]);
  expect(axis.ticks.map((tick) => tick.label).slice(0, 5)).toEqual(['6 Apr', '13', '20', '27', '4 May']);
  expect(axis.ribbon.filter((day) => day.state === 'trained')).toHaveLength(42);
});

test('load: blocks add up by hand, the last against the usual week', () => {
  const { load } = pageOf({ checkIns: everySecondDay((at) => ({ effort: at > 76 ? 9 : 6 })) });
  const session = load.panels[0];
  const totals = session?.blocks.map((block) => block.total) ?? [];
  // 360 AU a session; blocks of 7 days hold 3 or 4 of them in turn; those of the last block are at 540 AU.
  expect(totals.slice(0, 4)).toEqual([1080, 1440, 1080, 1440]);
  expect(totals.at(-1)).toBe(2160);
  // Weeks of 1,080 and 1,440: median 1,260, median deviation 180, band to 1,260 + 2 x 1.4826 x 180 = 1,793.7.
  expect(session?.usual?.week).toBe(1260);
  expect(session?.usual?.high).toBeCloseTo(1793.7, 1);
  expect(session?.blocks.at(-1)?.over).toBeCloseTo(366.3, 1);
  expect(session?.lines[0]?.text).toBe('2,160 AU, 1.71 x, over the usual week');
});

test('load: an unknown stretch is a gap, half-known blocks say at least', () => {
  const { load, axis } = pageOf({ checkIns: everySecondDay((at) => (at >= 20 && at < 50 ? null : {})) });
  const blocks = load.panels[0]?.blocks ?? [];
  expect(blocks[4]).toMatchObject({ total: null, printed: 'unknown' });
  expect(blocks[2]?.printed).toMatch(/\+$/);
  expect(axis.ribbon[30]?.state).toBe('unknown');
});

test('pain: worst of the day, the morning apart, unknown breaks the line', () => {
  const score = (moment: 'after' | 'morning', value: number) => ({
    region: 'elbow-inner' as const,
    side: 'right' as const,
    moment,
    value,
    kind: 'joint' as const,
    usual: null,
  });
  const { pain } = pageOf({
    checkIns: everySecondDay((at) => {
      if (at > 40 && at < 60) return null;
      return at === 81 ? { nothingHurts: false, pain: [score('after', 6), score('morning', 4)] } : {};
    }),
  });
  const line = pain.lines[0];
  expect(line).toMatchObject({
    place: 'right elbow, inner',
    peak: { value: 6, at: 81.5 },
    now: '0, Sun 28 Jun',
  });
  expect(line?.points.find((point) => point.at === 81.5)).toEqual({ at: 81.5, worst: 6, morning: 4 });
  expect(line?.points.find((point) => point.at === 50.5)).toEqual({ at: 50.5, worst: null, morning: null });
  expect(pain.table).toEqual([{ date: '2026-06-26', place: 'right elbow, inner', worst: '6', morning: '4' }]);
});

test('pairs: best of each side on the same day, the gap in percent of the larger', () => {
  const { pairs } = pageOf({
    checkIns: everySecondDay(() => ({ sets: [hold('left', 20), hold('right', 15)] })),
  });
  expect(pairs).toHaveLength(1);
  expect(pairs[0]?.pairs).toHaveLength(42);
  expect(pairs[0]).toMatchObject({
    left: 'left 20 s',
    right: 'right 15 s',
    gap: 'right 25 % behind over the last 6 pairs',
  });
});

test('ladders: steps from placements, points on days that met the pass mark', () => {
  const { ladders } = pageOf({
    placements: [{ ladderId: 'ladder-2', side: 'left', rungId: EACH.id, from: '2026-06-01' }],
    checkIns: everySecondDay((at) => ({ sets: [hold('left', at === 83 ? 20 : 12)] })),
  });
  const path = ladders.panels[0]?.paths[0];
  expect(path).toMatchObject({
    side: 'left',
    now: 'left: since 1 Jun, best 20 of 20 s, 100 % of the pass mark',
  });
  expect(path?.steps.map((step) => step.at)).toEqual([56, 84]);
  expect(path?.passes.map((pass) => pass.at)).toEqual([83.5]);
});

test('a client with nothing: no numbers, nothing invented', () => {
  const page = pageOf({ checkIns: [], plans: [], placements: [], rungs: [] });
  expect(page.headline[0]).toBe('Ada Example has not checked in yet.');
  expect(page.pain.lines).toEqual([]);
  expect(page.pairs).toEqual([]);
  expect(page.plan).toBeNull();
  expect(page.load.panels[0]?.lines[0]?.text).toBe('last 7 days unknown');
});

test('the order of rows in the history changes nothing', () => {
  const checkIns = everySecondDay(() => ({ sets: [hold('left', 20), hold('right', 15)] }));
  expect(pageOf({ checkIns: [...checkIns].reverse() })).toEqual(pageOf({ checkIns }));
});

test('the page ends last night, or today once the client has checked in', () => {
  expect(pageDate(['2026-06-20'], '2026-06-29')).toBe('2026-06-28');
  expect(pageDate(['2026-06-20', '2026-06-29'], '2026-06-29')).toBe('2026-06-29');
});

test('marks of plan versions that would run into each other stand without a label', () => {
  const [plan] = sampleHistory({}).plans;
  if (!plan) throw new Error('no plan');
  const versions = [20, 14, 13, 3].map((back, index) => ({
    ...plan,
    version: index + 1,
    from: addDays(LAST, -back),
  }));
  const marks = pageOf({ plans: versions }).axis.plans;
  expect(marks.map((mark) => mark.label)).toEqual(['plan 1', 'plan 2', '', 'plan 4']);
  expect(marks[2]?.exact).toContain('plan version 3');
});
