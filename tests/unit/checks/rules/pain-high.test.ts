import { describe, expect, it } from 'vitest';
import { painHigh } from '#lib/checks/rules/pain-high.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, day } from '#tests/fixtures/history-builders.ts';

const sore = (days: number, value: number, over = {}) => aCheckIn(days, { pain: [aPain(value, over)] });
const silent = (days: number) => aCheckIn(days, { nothingHurts: false });
const saidOf = (checkIns: HistoryCheckIn[], over = {}) =>
  said(theOutcome(judge(painHigh, aHistory({ checkIns, ...over }), 20)));

describe('pain-high', () => {
  it('speaks at 6, from the first check-in, now and with 3 points', () => {
    const finding = theFinding(judge(painHigh, aHistory({ checkIns: [sore(0, 6)] }), 0));
    expect(finding).toMatchObject({
      level: 'act',
      tier: 'now',
      points: 3,
      subject: { key: 'elbow-inner:right' },
    });
    expect(finding.sentence).toBe(
      'Right elbow, inner: **6 of 10** on Mon 2 Mar, up from 0. Loaded most by Pull-up in the 14 days before.',
    );
    expect(finding.working.doubt).toContain('Achilles and knee');
  });
  it('is clear at 5; at 5 it speaks under 18', () => {
    expect(saidOf([sore(0, 5)])).toBe('clear');
    expect(saidOf([sore(0, 5)], { client: { under18: true } })).toBe('flagged act');
    expect(saidOf([sore(0, 4)], { client: { under18: true } })).toBe('clear');
  });
  it('counts any moment, but only joints and tendons', () => {
    for (const moment of ['during', 'after', 'morning', 'today'] as const) {
      expect(saidOf([sore(0, 6, { moment })])).toBe('flagged act');
    }
    expect(judge(painHigh, aHistory({ checkIns: [sore(0, 9, { kind: 'muscle' })] }), 3).map(said)).toEqual([
      'clear',
    ]);
  });
  it('closes only after two check-ins running of 4 or less', () => {
    expect(saidOf([sore(0, 7), sore(2, 4)])).toBe('flagged act');
    expect(saidOf([sore(0, 7), sore(2, 4), sore(4, 4)])).toBe('clear');
    expect(saidOf([sore(0, 7), sore(2, 4), sore(4, 5)])).toBe('flagged act');
    expect(saidOf([sore(0, 7), sore(2, 4), sore(4, 5), sore(6, 4)])).toBe('flagged act');
    expect(saidOf([sore(0, 7), aCheckIn(2), aCheckIn(4)])).toBe('clear');
    expect(
      theOutcome(judge(painHigh, aHistory({ checkIns: [sore(0, 7), aCheckIn(2), aCheckIn(4)] }), 9)),
    ).toMatchObject({
      why: '2 check-ins of 4 or less',
    });
  });
  it('is not closed by silence about the place', () => {
    expect(saidOf([sore(0, 7), silent(2), silent(4), silent(6)])).toBe('flagged act');
    expect(saidOf([sore(0, 7)], {})).toBe('flagged act');
    const elsewhere = sore(2, 1, { region: 'knee' });
    expect(
      judge(painHigh, aHistory({ checkIns: [sore(0, 7), elsewhere, sore(4, 1, { region: 'knee' })] }), 9).map(
        said,
      ),
    ).toContain('flagged act');
  });
  it("is closed by a clinician's word of that day or later about that place", () => {
    const word = { date: day(3), region: null, side: null, words: 'May train' };
    expect(saidOf([sore(3, 7)], { clinicianWords: [word] })).toBe('clear');
    expect(saidOf([sore(4, 7)], { clinicianWords: [word] })).toBe('flagged act');
    expect(saidOf([sore(3, 7)], { clinicianWords: [{ ...word, region: 'knee' }] })).toBe('flagged act');
  });
  it('is this week for the usual of a known, treated place with a date for review; now for more', () => {
    const clinicianWords = [
      { date: day(1), region: 'elbow-inner' as const, side: 'right' as const, words: 'Known' },
    ];
    const limits = [
      {
        tissue: null,
        region: 'elbow-inner' as const,
        side: 'right' as const,
        rule: 'reduced' as const,
        percent: 50,
        from: day(1),
        until: day(30),
        who: 'clinician',
      },
    ];
    const tier = (usual: boolean | null, over = {}) =>
      theFinding(
        judge(painHigh, aHistory({ checkIns: [sore(5, 6, { usual })], clinicianWords, limits, ...over }), 9),
      ).tier;
    expect(tier(true)).toBe('this-week');
    const limit = (over: object) => ({ limits: limits.map((each) => ({ ...each, ...over })) });
    expect(tier(true, limit({ from: day(5) }))).toBe('this-week');
    expect(tier(true, limit({ from: day(6) }))).toBe('now');
    expect(tier(true, limit({ until: day(9) }))).toBe('this-week');
    expect(tier(true, limit({ until: day(8) }))).toBe('now');
    expect(tier(true, limit({ until: null }))).toBe('now');
    expect(tier(true, limit({ side: null }))).toBe('this-week');
    expect(tier(true, limit({ side: 'left' }))).toBe('now');
    expect(tier(true, limit({ region: null, tissue: 'elbow-bending' }))).toBe('this-week');
    expect(tier(true, limit({ region: null, tissue: 'neck' }))).toBe('now');
    expect(tier(true, limit({ region: null }))).toBe('now');
    // A lower value called new beside it is not the usual, whichever comes first.
    const usually = aPain(7, { region: 'elbow-inner', side: 'right', moment: 'during', usual: true });
    const fresh = aPain(6, { region: 'elbow-inner', side: 'right', moment: 'after', usual: false });
    expect(tier(true, { checkIns: [aCheckIn(5, { pain: [usually] })] })).toBe('this-week');
    expect(tier(true, { checkIns: [aCheckIn(5, { pain: [usually, fresh] })] })).toBe('now');
    expect(tier(true, { checkIns: [aCheckIn(5, { pain: [fresh, usually] })] })).toBe('now');
    // One that was not the usual stays now, also when the usual comes after it; what a clinician saw since does not.
    const both = (first: number) => [sore(first, 7, { usual: false }), sore(5, 6, { usual: true })];
    expect(tier(true, { checkIns: both(3) })).toBe('now');
    expect(tier(true, { checkIns: both(1) })).toBe('this-week');
    expect(tier(false)).toBe('now');
    expect(tier(null)).toBe('now');
    expect(tier(true, { limits: [] })).toBe('now');
    expect(tier(true, { clinicianWords: [] })).toBe('now');
  });
  it('gets worse with a higher value, and keeps the highest of the episode', () => {
    const evidence = theFinding(
      judge(painHigh, aHistory({ checkIns: [sore(0, 8), sore(2, 6)] }), 9),
    ).evidence;
    expect(evidence).toMatchObject({ value: 6, highest: 8, severity: 8, before: 8, known: false });
  });
  it('says "up from" only when it is', () => {
    const sentence = (first: number) =>
      theFinding(judge(painHigh, aHistory({ checkIns: [sore(0, first), sore(2, 7)] }), 9)).sentence;
    expect(sentence(3)).toContain('up from 3');
    expect(sentence(7)).not.toContain('up from');
  });
  it('speaks for places corrected away: every other place is clear from the first day on', () => {
    expect(judge(painHigh, aHistory({ checkIns: [aCheckIn(0)] }), 3)).toEqual([
      { status: 'clear', kind: 'pain-high', subject: { key: '*', label: '' }, coversFrom: day(0) },
    ]);
  });
  it('is the same for any order of rows, and keeps sides apart', () => {
    const rows = [sore(5, 7), sore(8, 4), sore(10, 5), sore(12, 6, { side: 'left' })];
    const outcomes = judge(painHigh, aHistory({ checkIns: rows }), 20);
    expect(judge(painHigh, aHistory({ checkIns: [...rows].reverse() }), 20)).toEqual(outcomes);
    expect(outcomes.map(said)).toEqual(['flagged act', 'flagged act', 'clear']);
  });
});
