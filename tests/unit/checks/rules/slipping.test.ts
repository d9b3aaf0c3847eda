import { describe, expect, it } from 'vitest';
import { slipping } from '#lib/checks/rules/slipping.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aRung, day, sets } from '#tests/fixtures/history-builders.ts';

const RUNG = aRung({ pass: { sets: 1, target: 100, days: 2, tries: null } });
const done = (days: number, value: number) => aCheckIn(days, { sets: sets([value], { planned: 100 }) });
const BEFORE = [30, 33, 36, 40].map((days) => done(days, 80));
const then = (...values: number[]) => values.map((value, at) => done(60 + at * 3, value));
const on = (checkIns: HistoryCheckIn[], days = 67, rung = RUNG) =>
  judge(slipping, aHistory({ checkIns, rungs: [rung] }), days);
const saidOf = (checkIns: HistoryCheckIn[], days = 67, rung = RUNG) =>
  said(theOutcome(on(checkIns, days, rung)));

describe('slipping', () => {
  it('speaks when the last three are well under before', () => {
    const finding = theFinding(on([...BEFORE, ...then(60, 62, 58)]));
    expect(finding).toMatchObject({
      level: 'watch',
      tier: 'this-week',
      evidence: { dropPercent: 25, now: 0.6, before: 0.8 },
    });
    expect(finding.sentence).toBe(
      'Pull-up: **25 %** under before, 60 % of the pass mark on the last 3 training days against 80 %.',
    );
  });
  it('draws the line at 15 %', () => {
    expect(saidOf([...BEFORE, ...then(68, 68, 68)])).toBe('flagged watch');
    expect(saidOf([...BEFORE, ...then(69, 69, 69)])).toBe('clear');
  });
  it('wants all three under, not only their median', () => {
    expect(saidOf([...BEFORE, ...then(60, 60, 80)])).toBe('clear');
    expect(saidOf([...BEFORE, ...then(60, 60, 79)])).toBe('flagged watch');
  });
  it('needs four training days 14-70 days back besides the last three', () => {
    expect(saidOf([...BEFORE.slice(1), ...then(60, 60, 60)])).toBe(
      'not-enough-history: 3 of 4 training days before the last 3',
    );
    const late = (...before: number[]) => [
      ...before.map((days) => done(days, 80)),
      ...[80, 83, 86].map((days) => done(days, 60)),
    ];
    expect(saidOf(late(16, 33, 36, 40), 90)).toBe('flagged watch'); // 70 days before the newest
    expect(saidOf(late(15, 33, 36, 40), 90)).toContain('3 of 4');
    expect(saidOf(late(33, 36, 40, 72), 90)).toBe('flagged watch'); // 14 days before it
    expect(saidOf(late(33, 36, 40, 73), 90)).toContain('3 of 4');
  });
  it('is lowered by no silence', () => {
    expect(saidOf([...BEFORE, ...then(60, 60, 60)], 87)).toBe('flagged watch');
  });
  it('is silent when the last score is older than 21 days', () => {
    expect(saidOf([...BEFORE, ...then(60, 60, 60)], 88)).toBe('not-enough-history: no score in 21 days');
  });
  it('is a note for balance holds, a row from 25 %', () => {
    const balance = aRung({ ...RUNG, family: 'balance', measure: 'hold' });
    expect(theFinding(on([...BEFORE, ...then(61, 61, 61)], 67, balance))).toMatchObject({
      level: 'note',
      tier: null,
      points: 0,
    });
    expect(saidOf([...BEFORE, ...then(60, 60, 60)], 67, balance)).toBe('flagged watch');
  });
  it('leaves out easy days, soft ground and days only tapped', () => {
    const soft = then(60, 60, 60).map((checkIn) => ({ ...checkIn, ground: 'grass' as const }));
    expect(saidOf([...BEFORE, ...soft])).not.toContain('flagged');
  });
  it('is a note only for holds of balance', () => {
    const sixteen = [...BEFORE, ...then(66, 66, 66)];
    expect(saidOf(sixteen, 67, aRung({ ...RUNG, family: 'balance' }))).toBe('flagged watch');
    expect(saidOf(sixteen, 67, aRung({ ...RUNG, measure: 'hold' }))).toBe('flagged watch');
    expect(saidOf(sixteen, 67, aRung({ ...RUNG, family: 'balance', measure: 'hold' }))).toBe('flagged note');
  });
  it('looks at the days since the placement, that day included', () => {
    const since = (days: number) => {
      const placements = [{ ladderId: 'pull', side: 'both' as const, rungId: 'pull-1', from: day(days) }];
      return said(
        theOutcome(
          judge(
            slipping,
            aHistory({ checkIns: [...BEFORE, ...then(60, 60, 60)], rungs: [RUNG], placements }),
            67,
          ),
        ),
      );
    };
    expect(since(30)).toBe('flagged watch');
    expect(since(31)).toContain('3 of 4');
  });
  it('has nothing to fall from at 0', () => {
    const nothing = [30, 33, 36, 40, 60, 63, 66].map((days) => done(days, 0));
    expect(saidOf(nothing)).toBe('clear');
  });
});
