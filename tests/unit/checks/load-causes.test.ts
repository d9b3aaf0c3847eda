import { describe, expect, it } from 'vitest';
import { moreSets } from '#lib/checks/load-causes.ts';
import { loadJump } from '#lib/checks/rules/load-jump.ts';
import { buildView } from '#lib/checks/view.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRestDay, aRung, sets, threeAWeek } from '#tests/fixtures/history-builders.ts';

const many = (count: number) => sets(Array<number>(count).fill(5));

describe('causes of a load jump', () => {
  it('are more sets of a drill only while both its last days lie within 14 days', () => {
    // Nine ordinary weeks, then 27 sets on day 64 and on day 74.
    const heavy = [64, 74].map((days) => aCheckIn(days, { sets: many(27) }));
    const rests = [62, 67, 70, 72, 76, 78].map((days) => aRestDay(days));
    const history = aHistory({ checkIns: [...threeAWeek(9), ...heavy, ...rests] });
    expect(theFinding(judge(loadJump, history, 77)).sentence).toContain('had 27 and 27 sets, usually 3');
    expect(said(theOutcome(judge(loadJump, history, 78)))).toBe('clear');
  });
  it('name the tissues that are over usual, of one ratio by name', () => {
    const checkIns = threeAWeek(10, (days, session) => aCheckIn(days, session < 27 ? {} : { sets: many(9) }));
    const { evidence } = theFinding(judge(loadJump, aHistory({ checkIns }), 67));
    expect(evidence.tissues).toBe('elbow-bending:both,upper-back:both');
  });
  it('name no tissue that usually carries nothing: there is nothing to compare with', () => {
    const stand = aRung({
      id: 'stand-1',
      ladderId: 'stand',
      measure: 'hold',
      secondsPerRep: null,
      weights: { 'wrist-back': 0.9 },
    });
    const new10 = sets(Array<number>(10).fill(60), { rungId: 'stand-1' });
    const checkIns = threeAWeek(10, (days, session) =>
      aCheckIn(days, session < 27 ? {} : { minutes: 100, sets: [...many(3), ...new10] }),
    );
    const { evidence } = theFinding(judge(loadJump, aHistory({ checkIns, rungs: [aRung(), stand] }), 67));
    expect(evidence.tissues).toBe('');
  });
  it('are none while the week is just usual, however low a team sets the limits', () => {
    const limits = {
      'loadJump.weekRatio': 1,
      'loadJump.sessionEach': 1,
      'loadJump.sessionMean': 1,
      'loadJump.aboveShare': 0,
    };
    const lastOf = (minutes: number) =>
      threeAWeek(10, (days, session) => aCheckIn(days, session < 27 ? {} : { minutes }));
    const saidOf = (minutes: number) =>
      said(theOutcome(judge(loadJump, aHistory({ checkIns: lastOf(minutes) }), 67, limits)));
    expect(saidOf(60)).toBe('clear');
    expect(saidOf(61)).toBe('flagged watch');
  });
});

describe('more sets of a drill', () => {
  it('is held against the days before its last ones, the newest of them that are in no easy week', () => {
    const day = (index: number, setsOfDay: number, easy = false) => ({ index, sets: setsOfDay, easy });
    const drill = {
      ladderId: 'pull',
      name: 'Pull',
      family: 'bent-arm-pull' as const,
      days: [day(0, 90), day(2, 2), day(4, 4), day(6, 50, true), day(8, 9), day(9, 9)],
    };
    const view = buildView(aHistory({ checkIns: [aCheckIn(0), aCheckIn(9)] }), {
      date: aCheckIn(9).date,
      instant: aCheckIn(9).sentAt,
    });
    const rule = { days: 2, before: 2, beforeAtLeast: 2, each: 1.2, mean: 1.2, within: 14 };
    expect(moreSets(view, drill, rule)).toMatchObject({ usual: 3, mean: 9, sets: [9, 9], from: 8 });
    expect(moreSets(view, drill, { ...rule, beforeAtLeast: 4 })).toBeUndefined();
  });
});
