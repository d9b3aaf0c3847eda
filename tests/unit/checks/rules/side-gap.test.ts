import { describe, expect, it } from 'vitest';
import { sideGap } from '#lib/checks/rules/side-gap.ts';
import type { ClientHistory, HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRung, day, START, sets } from '#tests/fixtures/history-builders.ts';

const TWO_FINGERS = aRung({
  name: 'One-arm hold, two fingers',
  measure: 'hold',
  eachSide: true,
  pass: { sets: 3, target: 30, days: 3, tries: null },
});
const pair = (days: number, left: number[], right: number[], over = {}) =>
  aCheckIn(days, {
    sets: [...sets(left, { side: 'left', planned: 30 }), ...sets(right, { side: 'right', planned: 30 })],
    ...over,
  });
const pairs = (left: number[], right: number[]) =>
  left.map((value, at) => pair(at * 3, [value], [right[at] ?? 0]));
const history = (checkIns: HistoryCheckIn[], over: Partial<Omit<ClientHistory, 'client'>> = {}) =>
  aHistory({ rungs: [TWO_FINGERS], checkIns, ...over });
const saidOf = (checkIns: HistoryCheckIn[], days = 30, over = {}) =>
  said(theOutcome(judge(sideGap, history(checkIns, over), days)));
// Eight invented days: p = 1/256, right 6 % variation.
const RIGHT = [19, 20, 18, 21, 20, 22, 21, 20];
const LEFT = [14, 15, 13, 15, 16, 15, 14, 15];
/** Six days on which the left is `percent` under 20 s; the sides hardly vary. */
const six = (percent: number) =>
  pairs(new Array<number>(6).fill(20 - percent / 5), new Array<number>(6).fill(20));

describe('side-gap', () => {
  it('speaks when the left is lower on 8 of 8 days', () => {
    const finding = theFinding(judge(sideGap, history(pairs(LEFT, RIGHT)), 30));
    expect(finding).toMatchObject({
      level: 'act',
      points: 2,
      tier: 'this-week',
      subject: { key: 'pull', side: 'left' },
    });
    expect(finding.evidence).toMatchObject({ lower: 8, untied: 8, p: 0.00391, side: 'left' });
    expect(finding.sentence).toBe(
      'One-arm hold, two fingers: left **28 %** behind, 15 s against 20.5 s, lower on 8 of 8 days.',
    );
    expect(finding.step.text).toContain("right held at the left's number");
  });
  it('is clear when the sides take turns, and for a gap within what they vary', () => {
    expect(saidOf(pairs([20, 18, 20, 18, 20, 18], [18, 20, 18, 20, 18, 20]))).toBe('clear');
    expect(saidOf(pairs([10, 16, 9, 17, 10, 16], [12, 19, 11, 20, 12, 19]))).toBe('clear');
  });
  it('watches from 10 %, acts from 15 %', () => {
    expect(saidOf(six(9.9))).toBe('clear');
    expect(saidOf(six(10))).toBe('flagged watch');
    expect(saidOf(six(14.9))).toBe('flagged watch');
    expect(saidOf(six(15))).toBe('flagged act');
  });
  it('needs six untied pairs in 56 days', () => {
    expect(saidOf(six(20).slice(1))).toBe('not-enough-history: 5 of 6 untied pairs in 56 days');
    const tied = [...six(20).slice(1), pair(20, [20], [20])];
    expect(saidOf(tied)).toContain('5 of 6');
    const [first, ...others] = six(20).map((checkIn) => checkIn.sets);
    const spread = (last: number) => [
      aCheckIn(0, { sets: first ?? [] }),
      ...others.map((each, at) => aCheckIn(last - 2 * at, { sets: each })),
    ];
    expect(saidOf(spread(55), 60)).toBe('flagged act');
    expect(saidOf(spread(56), 60)).toContain('5 of 6');
  });
  it('is lowered by no silence; after 56 days of it there is too little to say', () => {
    expect(saidOf(six(20), 70)).toBe('flagged act');
    expect(saidOf(six(20), 71)).toContain('0 of 6');
  });
  it('asks for the sign test: 6 of 7 is not enough, 7 of 8 is', () => {
    const but = (days: number) => [
      ...six(20),
      ...new Array(days).fill(0).map((_, at) => pair(20 + at, [16], [20])),
    ];
    const other = pair(29, [20], [19]);
    expect(saidOf([...but(0), other])).toBe('clear');
    expect(saidOf([...but(1), other])).toBe('flagged act');
  });
  it('keeps ties in the median of the last six', () => {
    const ties = [20, 21, 22].map((days) => pair(days, [20], [20]));
    expect(saidOf([...six(12), ...ties.slice(0, 2)])).toBe('flagged watch'); // four of 12 %, two of 0
    expect(saidOf([...six(12), ...ties])).toBe('clear'); // three of each: 6 %
  });
  it('mirrors the side when the history is mirrored', () => {
    const mirrored = theFinding(judge(sideGap, history(pairs(RIGHT, LEFT)), 30));
    expect(mirrored).toMatchObject({
      level: 'act',
      subject: { side: 'right', label: 'One-arm hold, two fingers, right' },
    });
    expect(mirrored.sentence).toContain('right **28 %** behind, 15 s against 20.5 s');
  });
  it('leaves out pairs in which both reached the target', () => {
    const full = [20, 21, 22, 23].map((days) => pair(days, [30], [31]));
    expect(saidOf([...six(20), ...full])).toBe('flagged act');
    expect(saidOf([20, 21, 22, 23, 24, 25].map((days) => pair(days, [30], [40])))).toContain('0 of 6');
  });
  it('compares the clean sets both sides have', () => {
    const uneven = [0, 3, 6, 9, 12, 15].map((days) => pair(days, [20, 20], [20, 20, 5]));
    expect(saidOf(uneven)).toContain('0 of 6 untied');
    const unclean = [0, 3, 6, 9, 12, 15].map((days) =>
      aCheckIn(days, {
        sets: [...sets([10], { side: 'left', clean: false }), ...sets([20], { side: 'right' })],
      }),
    );
    expect(saidOf(unclean)).toContain('0 of 6');
  });
  it('does not count soft ground and days only tapped', () => {
    const soft = six(20).map((checkIn) => ({ ...checkIn, ground: 'sand' as const }));
    expect(saidOf(soft)).toContain('0 of 6');
  });
  it('starts again on a new rung; sides on different rungs are no reason', () => {
    const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(3) }];
    expect(saidOf(six(20), 30, { placements })).toContain('5 of 6');
    const apart = [
      { ladderId: 'pull', side: 'left' as const, rungId: 'pull-1', from: START },
      { ladderId: 'pull', side: 'right' as const, rungId: 'pull-2', from: START },
    ];
    const rungs = [TWO_FINGERS, aRung({ ...TWO_FINGERS, id: 'pull-2', position: 2 })];
    expect(judge(sideGap, history(six(20), { placements: apart, rungs }), 30)).toEqual([]);
  });
  it('is silent while a step is worked on, unless 10 points worse', () => {
    const steps = [
      { kind: 'one-side-back', takenOn: day(15), ladderId: 'pull', side: null, reviewOn: day(60), words: '' },
    ];
    const later = (left: number) => [18, 20, 22, 24, 26, 28].map((days) => pair(days, [left], [20]));
    expect(saidOf([...six(20), ...later(16)], 30, { steps })).toBe('clear, lower bound');
    expect(saidOf([...six(20), ...later(14.2)], 30, { steps })).toBe('clear, lower bound');
    expect(saidOf([...six(20), ...later(14)], 30, { steps })).toBe('flagged act');
    expect(saidOf([...six(20), ...later(16)], 30, { steps: [{ ...steps[0], reviewOn: day(30) }] })).toBe(
      'flagged act',
    );
  });
  it('does not look at ranges or rungs of both hands', () => {
    expect(
      judge(sideGap, history(six(20), { rungs: [{ ...TWO_FINGERS, measure: 'range-up' }] }), 30),
    ).toEqual([]);
    expect(judge(sideGap, history(six(20), { rungs: [{ ...TWO_FINGERS, eachSide: false }] }), 30)).toEqual(
      [],
    );
  });
  it('must be larger than the sides vary, not the same', () => {
    // Left 16 each day, right 18 and 22 in turn: the right varies by 10.95 % (sample), the median gap is 19.2 %.
    const turning = [0, 3, 6, 9, 12, 15].map((days, at) => pair(days, [16], [at % 2 === 0 ? 18 : 22]));
    expect(theFinding(judge(sideGap, history(turning), 30)).evidence).toMatchObject({
      variation: 10.95,
      percent: 19.19,
    });
    // Left 18, right 19 and 25: the right varies by 15 %, the gap is 16.6 %; 18.5 makes it 14.3 %.
    const wide = (left: number) =>
      [0, 3, 6, 9, 12, 15].map((days, at) => pair(days, [left], [at % 2 === 0 ? 19 : 25]));
    expect(saidOf(wide(18))).toBe('flagged act');
    expect(saidOf(wide(18.5))).toBe('clear');
  });
  it('proposes the weaker side one support back', () => {
    expect(theFinding(judge(sideGap, history(pairs(LEFT, RIGHT)), 30)).step.text).toMatch(
      /^Left one support back, right held/,
    );
    expect(theFinding(judge(sideGap, history(pairs(RIGHT, LEFT)), 30)).step.text).toMatch(
      /^Right one support back, left held/,
    );
  });
  it('takes the pairs up to the day of the step for what the gap was then', () => {
    const steps = [
      { kind: 'one-side-back', takenOn: day(18), ladderId: 'pull', side: null, reviewOn: day(60), words: '' },
    ];
    const then = [...six(20).slice(1), pair(18, [10], [20])];
    const later = [19, 20, 22, 24, 26, 28].map((days) => pair(days, [13.9], [20]));
    // Median before is 20 % with day 18 and without it; 30.5 % now is 10 points worse.
    expect(saidOf([...then, ...later], 30, { steps })).toBe('flagged act');
    const onTheDay = (left: number) => [pair(18, [left], [20]), ...later];
    expect(saidOf(onTheDay(14), 30, { steps })).toBe('clear, lower bound');
    expect(saidOf(onTheDay(18), 30, { steps })).toBe('flagged act');
  });
  it('counts a pair of which one side reached the target', () => {
    expect(saidOf([0, 3, 6, 9, 12, 15].map((days) => pair(days, [25], [30])))).toBe('flagged act');
  });
  it('asks for an open-ended set when most of the last six pairs ended at the target', () => {
    const topped = (days: number) => pair(days, [30], [30]);
    const asks = '; both sides reached the target on';
    const on = (dates: number[]) => dates.map(topped);
    expect(saidOf(on([0, 3, 6, 9, 12, 15]))).toBe(
      'not-enough-history: 0 of 6 untied pairs in 56 days; both sides reached the target on 6 of 6 days: ask for one open-ended set every 2 weeks',
    );
    expect(saidOf(on([0, 3, 6, 9, 12]))).not.toContain(asks);
    const [early, late] = [
      [0, 1],
      [20, 22, 24, 26],
    ].map(on);
    const before = [pair(2, [20], [22]), pair(3, [20], [22])];
    expect(saidOf([...before, ...(late ?? [])])).toContain(`${asks} 4 of 6 days`);
    // Three of six are not most of them.
    expect(saidOf([pair(1, [20], [22]), ...before, ...(late ?? []).slice(1)])).not.toContain(asks);
    // A pair that says something within the last two weeks is such a set: 14 days before the last is too long ago.
    const open = (days: number) => [...(early ?? []), topped(4), pair(days, [20], [22]), ...on([20, 26])];
    expect(saidOf(open(12))).toContain(`${asks} 5 of 6 days`);
    expect(saidOf(open(13))).not.toContain(asks);
  });
});
