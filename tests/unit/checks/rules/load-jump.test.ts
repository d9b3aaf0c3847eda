import { describe, expect, it } from 'vitest';
import { loadJump } from '#lib/checks/rules/load-jump.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, aRestDay, sets, threeAWeek } from '#tests/fixtures/history-builders.ts';

// Ten weeks of three sessions of 300 AU: the usual week is 900 AU. The last three sessions are changed.
const WEEKS = 10;
const LAST = 67;
const ending = (last: Partial<HistoryCheckIn>, count = 3) =>
  threeAWeek(WEEKS, (days, session) => aCheckIn(days, session < WEEKS * 3 - count ? {} : last));
const saidOf = (checkIns: HistoryCheckIn[], over: Parameters<typeof aHistory>[0] = {}, days = LAST) =>
  said(theOutcome(judge(loadJump, aHistory({ checkIns, ...over }), days)));

describe('load-jump', () => {
  it('speaks when the last three sessions are all bigger, with its numbers', () => {
    const finding = theFinding(judge(loadJump, aHistory({ checkIns: ending({ minutes: 100 }) }), LAST));
    // 3 x 500 = 1,500 AU in 7 days (3 sessions), against 900: 1.67.
    expect(finding.sentence).toMatch(/\*\*1\.7 × usual\*\* \(1,500 AU against 900\)/);
    expect(finding.sentence).toContain('the last 3 sessions were all bigger');
    expect(finding.sentence.length).toBeLessThan(160);
    expect(finding.step.text.length).toBeLessThan(90);
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      points: 1,
      short: 'load 1.7 × usual',
    });
    expect(finding.evidence).toMatchObject({ weekAu: 1_500, usualAu: 900, ratio: 1.67 });
    expect(JSON.stringify(finding)).not.toMatch(/risk/i);
  });
  // Sessions on average 1.5 x the usual one and the week 1.3 x usual: 450 AU of 300 is just there. Own rule.
  it.each([
    [89, 'clear'], // 445 AU
    [90, 'flagged watch'], // 450 AU
    [120, 'flagged act'], // 2 x usual
  ])('three sessions of %i minutes give %s', (minutes, expected) => {
    expect(saidOf(ending({ minutes }))).toBe(expected);
  });
  it('does not speak for one big session', () => {
    expect(saidOf(ending({ minutes: 110 }, 1))).toBe('clear');
  });
  it('sees one drill done with far more sets while the sessions look the same', () => {
    expect(saidOf(ending({ sets: sets(Array<number>(9).fill(5)) }))).toContain('flagged');
    expect(saidOf(ending({ sets: sets([5, 5, 5, 5]) }))).toBe('clear');
  });
  it('speaks of the tissue alone when efforts were never told', () => {
    const checkIns = ending({ sets: sets(Array<number>(9).fill(5)) }).map((one) => ({
      ...one,
      effort: null,
    }));
    const finding = theFinding(judge(loadJump, aHistory({ checkIns }), LAST));
    expect(finding.sentence).toMatch(/^Load on .+ is \*\*3 × usual\*\* this week because /);
    expect(finding.short).toBe('load 3 × usual');
    expect(finding.evidence).toMatchObject({ usualAu: null, ratio: null });
  });
  it('gives no ratio to a usual week of nothing but rest', () => {
    // Six weeks of training, ten of rest days told, then three sessions of 500 AU where 300 was usual.
    const rest = Array.from({ length: 70 }, (_, days) => aRestDay(42 + days));
    const checkIns = [
      ...threeAWeek(6),
      ...rest,
      ...[112, 114, 116].map((days) => aCheckIn(days, { minutes: 100 })),
    ];
    const finding = theFinding(judge(loadJump, aHistory({ checkIns }), 116));
    expect(finding.sentence).toBe(
      'The week is **far over usual** (1,500 AU against 0) because the last 3 sessions were all bigger; 28 of 28 days known.',
    );
    expect(finding).toMatchObject({ level: 'watch', short: 'load jump' });
    expect(finding.evidence).toMatchObject({ usualAu: 0, ratio: null });
  });
  it('takes the week just before the last 7 days for one of the eight', () => {
    // Friday a week ago 600 AU, so that those 7 days hold 1,200; tonight 1,500 AU, so that these hold 2,100.
    const checkIns = threeAWeek(WEEKS, (days) => aCheckIn(days, { minutes: days === 60 ? 120 : 60 })).map(
      (one, session) => (session === 29 ? { ...one, effort: 10, minutes: 150 } : one),
    );
    const finding = theFinding(judge(loadJump, aHistory({ checkIns }), LAST));
    expect(finding.evidence.cause).toBe('it is far over the largest week of the 8 before (1,200 AU)');
  });
  it('is silent where the coach accepted the jump in the plan, unless exceeded by 15 %', () => {
    const plans = [aPlan({ acceptedWeekAu: 1_500 })];
    expect(saidOf(ending({ minutes: 100 }), { plans })).toBe('clear');
    expect(saidOf(ending({ minutes: 120 }), { plans })).toBe('flagged act');
  });
  it('asks for four ordinary weeks', () => {
    const short = threeAWeek(5, (days, session) => aCheckIn(days, session < 12 ? {} : { minutes: 120 }));
    expect(saidOf(short, {}, 32)).toMatch(/^not-enough-history: \d of 4 ordinary weeks known$/);
  });
  it('in the first weeks looks at the told week only, and only watches', () => {
    const first = threeAWeek(2, (days) => aCheckIn(days, { minutes: 120 }));
    const told = (toldWeekAu: number | null) =>
      said(theOutcome(judge(loadJump, aHistory({ checkIns: first, client: { toldWeekAu } }), 11)));
    expect(told(900)).toBe('flagged watch'); // 1,800 over 1.5 x 900
    expect(told(1_200)).toContain('clear'); // 1,800 is just 1.5 x
    expect(told(null)).toContain('not-enough-history');
    expect(told(0)).toBe('not-enough-history: 12 of 28 days known');
  });
  it('does not clear on days that are not known', () => {
    const first = { checkIns: threeAWeek(2), client: { toldWeekAu: 900 } };
    const early = (days: number) => said(theOutcome(judge(loadJump, aHistory(first), days)));
    expect(early(11)).toBe('clear');
    expect(early(12)).toBe('clear, lower bound');
    expect(saidOf(threeAWeek(WEEKS), {}, LAST)).toBe('clear');
    expect(saidOf(threeAWeek(WEEKS), {}, LAST + 4)).toBe('clear, lower bound');
  });
});

// Every clause on its limit and just over it: the limit is put where the history is.
describe('load-jump on its limits', () => {
  const spoken = (checkIns: HistoryCheckIn[], over: Parameters<typeof judge>[3]) =>
    theOutcome(judge(loadJump, aHistory({ checkIns }), LAST, over)).status === 'flagged';
  // Last three sessions 500 AU of 300; week 1,500 AU of 900.
  const sessions = ending({ minutes: 100 });
  // One session of 1,500 AU: week 2,100 AU, the largest before 900.
  const oneHuge = ending({ effort: 10, minutes: 150 }, 1);
  // 9 sets of 3: 432 BW s on the elbow's bending side (both arms) of 144, weight 0.8.
  const manySets = ending({ sets: sets(Array<number>(9).fill(5)) });
  it.each([
    ['loadJump.weekRatio', sessions, 5 / 3],
    ['loadJump.sessionEach', sessions, 5 / 3],
    ['loadJump.sessionMean', sessions, 5 / 3],
    ['loadJump.floorAu', sessions, 1_500],
    ['loadJump.aboveShare', sessions, 2],
    ['loadJump.bigWeekRatio', oneHuge, 7 / 3],
    ['loadJump.largestRatio', oneHuge, 7 / 3],
    ['loadJump.tissueRatio', manySets, 3],
    ['loadJump.setsEach', manySets, 3],
    ['loadJump.setsMean', manySets, 3],
    ['loadJump.floorBws', manySets, 432],
    ['tissue.loaded', manySets, 0.8],
    ['loadJump.setDaysAtLeast', manySets, 10],
    ['loadJump.sessionsAtLeast', sessions, 15],
  ] as const)('%s speaks on the limit and not over it', (id, checkIns, limit) => {
    expect(spoken(checkIns, { [id]: limit })).toBe(true);
    expect(spoken(checkIns, { [id]: limit + 0.001 })).toBe(false);
  });
  it('acts on the limit', () => {
    const level = (limit: number) =>
      said(
        theOutcome(judge(loadJump, aHistory({ checkIns: sessions }), LAST, { 'loadJump.actRatio': limit })),
      );
    expect(level(5 / 3)).toBe('flagged act');
    expect(level(1.67)).toBe('flagged watch');
  });
  it('is silent at 15 % over what was accepted', () => {
    const history = aHistory({ checkIns: sessions, plans: [aPlan({ acceptedWeekAu: 1_000 })] });
    const by = (margin: number) =>
      said(theOutcome(judge(loadJump, history, LAST, { 'loadJump.acceptedMargin': margin })));
    expect(by(1.5)).toBe('clear');
    expect(by(1.499)).toBe('flagged watch');
  });
  it('goes from the told week to the own weeks after 28 days', () => {
    const checkIns = threeAWeek(5, (days) => aCheckIn(days, { minutes: 120 }));
    const on = (days: number) =>
      said(theOutcome(judge(loadJump, aHistory({ checkIns, client: { toldWeekAu: 700 } }), days)));
    expect(on(27)).toMatch(/^flagged watch/);
    expect(on(28)).toMatch(/^not-enough-history/);
  });
});
