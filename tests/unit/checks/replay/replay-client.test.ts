import { describe, expect, it } from 'vitest';
import { compareStays } from '#lib/checks/replay/compare-stays.ts';
import { kindsReading } from '#lib/checks/replay/kinds-reading.ts';
import { type ReplayAsked, replayClient } from '#lib/checks/replay/replay-client.ts';
import type { Replay } from '#lib/checks/replay/replay-reasons.ts';
import { DEFAULT_LIMITS, isLimitId, type Limits, limitsWith } from '#lib/checks/thresholds.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { CHECK_KINDS } from '#lib/domain/vocabulary.ts';
import { addDays } from '#tests/bench/detect/calendar.ts';
import { FIRST_DAY, makeClient } from '#tests/bench/detect/generator.ts';
import { WORLDS } from '#tests/bench/detect/worlds.ts';

const DAYS = 190;
const nights = Array.from({ length: 60 }, (_, index) => {
  const date = addDays(FIRST_DAY, DAYS - 60 + index);
  return { date, instant: `${addDays(date, 1)}T03:00:00.000Z` };
});

function asked(planted: string, seed: number, over: Partial<ReplayAsked> = {}): ReplayAsked {
  const world = WORLDS[seed % WORLDS.length];
  if (!world) throw new Error('no world');
  const { history } = makeClient(world, planted, seed, DAYS);
  return {
    history,
    acts: [],
    nights,
    nightsDone: 100,
    touched: CHECK_KINDS,
    settled: CHECK_KINDS,
    heldBack: [],
    shared: true,
    ...over,
  };
}

const of = ({ stays }: Replay, kinds: readonly CheckKind[]) =>
  stays
    .filter(({ kind }) => kinds.includes(kind))
    .map((stay) => JSON.stringify(stay))
    .sort();

describe('replayClient', () => {
  const changes: [string, Partial<Limits>][] = [
    ['stall', { 'stalled.minDays': 21, 'stalled.scoreUnder': 0.99, 'stalled.slopePercent': 60 }],
    ['side', { 'sideGap.watchPercent': 5, 'sideGap.p': 0.2, 'sideGap.pairs': 8 }],
    ['pain-slow', { 'painRising.watch': 2, 'painLingering.share': 0.3 }],
    ['jump-one-ladder', { 'loadJump.weekRatio': 1.1, 'loadJump.setsMean': 1.5, 'loadJump.actRatio': 1.3 }],
    ['quiet', { 'goneQuiet.watchDays': 14, 'goneQuiet.actDays': 20 }],
    ['too-little-time', { 'tooLittleTime.share': 0.8, 'tooLittleTime.p': 0.1 }],
    ['pain-lingering', { 'week.usualAtLeast': 3, 'coldStart.days': 150 }],
    ['step', { 'reason.clearNights': 6 }],
    ['slipping', { 'score.atLeastShare': 0.9, 'grade.careful': 2, 'usualPain.fromDays': 7 }],
    ['return', { 'day.restGapDays': 2 }],
  ];

  it('asks only the kinds that a number touches, and says of them what all the checks would say', () => {
    let differ = 0;
    changes.forEach(([planted, change], index) => {
      const limits = limitsWith(change);
      const reading = kindsReading(Object.keys(change).filter(isLimitId));
      const asksOf = reading.settled;
      for (const seed of [index]) {
        const few = replayClient(asked(planted, seed, reading), [DEFAULT_LIMITS, limits]);
        const all = replayClient(asked(planted, seed), [DEFAULT_LIMITS, limits]);
        expect(of(few.before, asksOf)).toEqual(of(all.before, asksOf));
        expect(of(few.after, asksOf)).toEqual(of(all.after, asksOf));
        const changed = ({ before, after }: typeof few) => compareStays(before.stays, after.stays);
        expect(changed(few)).toEqual(changed(all));
        if (JSON.stringify(of(few.before, CHECK_KINDS)) !== JSON.stringify(of(few.after, CHECK_KINDS)))
          differ += 1;
      }
    });
    expect(differ).toBeGreaterThan(3); // else the changes would touch nothing and the test see nothing
  });

  it('finds the step that would be held back by what the new numbers see', () => {
    const limits = limitsWith({ 'painLingering.from': 2, 'painLingering.share': 0.2 });
    const made = asked('step', 6, kindsReading(['painLingering.from', 'painLingering.share']));
    const sore = {
      region: 'wrist-back',
      side: 'right',
      moment: 'after',
      value: 2,
      kind: 'joint',
      usual: null,
    } as const;
    const checkIns = made.history.checkIns.map((one) => ({ ...one, pain: [sore], nothingHurts: false }));
    const one = { ...made, history: { ...made.history, checkIns } };
    const few = replayClient(one, [DEFAULT_LIMITS, limits]);
    const changes = compareStays(few.before.stays, few.after.stays);
    expect(changes.map(({ what, stay }) => `${what} ${stay.kind}`)).toEqual(
      expect.arrayContaining(['gone step-up-earned', 'came pain-lingering']),
    );
    const all = replayClient({ ...one, ...asked('step', 6), history: one.history }, [DEFAULT_LIMITS, limits]);
    expect(changes).toEqual(compareStays(all.before.stays, all.after.stays));
  });

  it('says twice the same under the same numbers, whatever the order of the rows', () => {
    const one = asked('stall', 3);
    const { before, after } = replayClient(one, [DEFAULT_LIMITS, DEFAULT_LIMITS]);
    expect(after).toEqual(before);
    expect(compareStays(before.stays, after.stays)).toEqual([]);
    const turned = { ...one, history: { ...one.history, checkIns: [...one.history.checkIns].reverse() } };
    expect(replayClient(turned, [DEFAULT_LIMITS, DEFAULT_LIMITS]).before.stays).toEqual(before.stays);
  });

  it('knows a check-in only from when it was sent', () => {
    const one = asked('pain-six', 2);
    const late = {
      ...one.history,
      checkIns: one.history.checkIns.map((each) => ({ ...each, sentAt: '2030-01-01T00:00:00.000Z' })),
    };
    const { before } = replayClient({ ...one, history: late }, [DEFAULT_LIMITS, DEFAULT_LIMITS]);
    expect(before.stays.filter(({ kind }) => kind === 'pain-high')).toEqual([]);
    expect(
      replayClient(one, [DEFAULT_LIMITS, DEFAULT_LIMITS]).before.stays.some(
        ({ kind }) => kind === 'pain-high',
      ),
    ).toBe(true);
  });

  it('writes to the client page only in the first nights, and counts from then on', () => {
    const one = asked('stall', 3, { nightsDone: 0 });
    const [first] = replayClient(one, [DEFAULT_LIMITS, DEFAULT_LIMITS]).before.stays.filter(
      ({ from, tier, kind }) =>
        from === nights[0]?.date && tier !== null && kind !== 'pain-high' && kind !== 'danger-sign',
    );
    expect(first?.onBoard).toBe(nights[3]?.date);
  });

  it('lets a coach put aside and close what was raised, at the moment they did', () => {
    const one = asked('stall', 3);
    const plain = replayClient(one, [DEFAULT_LIMITS, DEFAULT_LIMITS]).before.stays.find(
      ({ kind, until }) => kind === 'stalled' || until === null,
    );
    if (!plain) throw new Error('nothing was raised');
    const night = nights.findIndex(({ date }) => date === plain.from);
    const at = nights[night + 1]?.instant ?? '';
    const act = {
      kind: plain.kind,
      key: plain.key,
      at,
      state: 'closed' as const,
      asideUntil: null,
      asideUntilWorse: false,
      withClientUntil: null,
      closedWhy: 'done',
    };
    const { before } = replayClient({ ...one, acts: [act] }, [DEFAULT_LIMITS, DEFAULT_LIMITS]);
    const stays = before.stays.filter(({ kind, key }) => kind === plain.kind && key === plain.key);
    expect(stays[0]).toMatchObject({ from: plain.from, until: at.slice(0, 10) });
  });
});

describe('compareStays', () => {
  const stay = {
    kind: 'stalled' as const,
    key: 'a',
    label: 'A',
    short: 'stalled',
    level: 'watch' as const,
    tier: 'this-week' as const,
  };
  const on = (day: string, over = {}) => ({ ...stay, from: day, until: null, onBoard: day, ...over });

  it('says what came, what went, what moved and what weighs differently', () => {
    expect(compareStays([], [on('2026-03-02')])).toEqual([{ what: 'came', stay: on('2026-03-02') }]);
    expect(compareStays([on('2026-03-02')], [])).toEqual([{ what: 'gone', stay: on('2026-03-02') }]);
    expect(compareStays([on('2026-03-02')], [on('2026-03-06')])).toMatchObject([{ what: 'moved', days: 4 }]);
    expect(compareStays([on('2026-03-02')], [on('2026-03-02', { level: 'act' })])).toMatchObject([
      { what: 'weighs-differently' },
    ]);
  });

  it('pairs the nearest of one kind and subject, and none more than four weeks apart', () => {
    const moved = compareStays([on('2026-01-02'), on('2026-03-02')], [on('2026-03-01')]);
    expect(moved.map(({ what }) => what)).toEqual(['gone', 'moved']);
    expect(compareStays([on('2026-01-01')], [on('2026-01-30')]).map(({ what }) => what)).toEqual([
      'gone',
      'came',
    ]);
    expect(compareStays([on('2026-01-01')], [on('2026-01-01', { key: 'b' })])).toHaveLength(2);
  });

  it('leaves out what never stood on the board', () => {
    expect(compareStays([on('2026-03-02', { onBoard: null })], [])).toEqual([]);
  });
});
