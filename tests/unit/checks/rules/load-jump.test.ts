import { describe, expect, it } from 'vitest';
import { loadJump } from '#lib/checks/rules/load-jump.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPlan, sets, threeAWeek } from '#tests/fixtures/history-builders.ts';

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
    expect(finding).toMatchObject({ level: 'watch', tier: 'this-week', points: 1 });
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
  });
  it('does not clear on days that are not known', () => {
    expect(saidOf(threeAWeek(WEEKS), {}, LAST)).toBe('clear');
    expect(saidOf(threeAWeek(WEEKS), {}, LAST + 4)).toBe('clear, lower bound');
  });
});
