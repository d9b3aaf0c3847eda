import { describe, expect, it } from 'vitest';
import { dangerSign } from '#lib/checks/rules/danger-sign.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { DANGER_SIGNS, type DangerSign, type PainRegion, type PainSide } from '#lib/domain/vocabulary.ts';
import { judge, said, theFinding, theOutcome } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, day } from '#tests/fixtures/history-builders.ts';

type Told = { goneWithinMinute?: boolean; region?: PainRegion | null; side?: PainSide | null };
const sign = (
  days: number,
  name: DangerSign,
  { goneWithinMinute = false, region = null, side = null }: Told = {},
) => aCheckIn(days, { nothingHurts: false, dangerSigns: [{ sign: name, goneWithinMinute, region, side }] });
const on = (checkIns: HistoryCheckIn[], over = {}) => judge(dangerSign, aHistory({ checkIns, ...over }), 30);
const saidOf = (checkIns: HistoryCheckIn[], over = {}) => said(theOutcome(on(checkIns, over)));
const tierOf = (checkIns: HistoryCheckIn[]) => theFinding(on(checkIns)).tier;
const TINGLING = 'numb-or-tingling';

describe('danger-sign', () => {
  it('speaks at any yes, now, with 3 points', () => {
    const finding = theFinding(on([sign(2, 'chest-pain')]));
    expect(finding).toMatchObject({
      level: 'act',
      tier: 'now',
      points: 3,
      subject: { key: 'chest-pain:any:any' },
    });
    expect(finding.sentence).toBe('Chest pain on **Wed 4 Mar**.');
    expect(finding.step.kind).toBe('send-to-clinician');
  });
  it.each(DANGER_SIGNS)('speaks now for %s', (name) => {
    expect(tierOf([sign(2, name)])).toBe('now');
  });
  it('names the place', () => {
    const finding = theFinding(on([sign(2, 'swelling', { region: 'elbow-inner', side: 'right' })]));
    expect(finding.subject).toMatchObject({
      key: 'swelling:elbow-inner:right',
      region: 'elbow-inner',
      side: 'right',
    });
    expect(finding.sentence).toContain('right elbow, inner');
  });
  it('is today for tingling gone within a minute, the first time in 14 days; now otherwise', () => {
    expect(tierOf([sign(2, TINGLING, { goneWithinMinute: true })])).toBe('today');
    expect(tierOf([sign(2, TINGLING)])).toBe('now');
    expect(tierOf([sign(2, 'weakness', { goneWithinMinute: true })])).toBe('now');
    const gone = { goneWithinMinute: true };
    expect(tierOf([sign(2, TINGLING, gone), sign(16, TINGLING, gone)])).toBe('now');
    expect(tierOf([sign(2, TINGLING, gone), aCheckIn(5), aCheckIn(7), sign(17, TINGLING, gone)])).toBe(
      'today',
    );
  });
  it('stays now for one that lasted, also when a passing one comes weeks after it', () => {
    const silent = (days: number) => aCheckIn(days, { nothingHurts: false });
    const passing = sign(20, TINGLING, { goneWithinMinute: true });
    expect(tierOf([sign(2, TINGLING), silent(6), silent(13), passing])).toBe('now');
    const once = sign(2, TINGLING, { goneWithinMinute: true });
    expect(tierOf([once, silent(6), silent(13), passing])).toBe('today');
    const clinicianWords = [{ date: day(9), region: null, side: null, words: 'Fine' }];
    const spokenOf = on([sign(2, TINGLING), silent(6), passing], { clinicianWords });
    expect(theFinding(spokenOf).tier).toBe('today');
  });
  it('is closed by two check-ins without it and with 4 or less', () => {
    expect(saidOf([sign(2, 'weakness'), aCheckIn(4)])).toBe('flagged act');
    expect(saidOf([sign(2, 'weakness'), aCheckIn(4), aCheckIn(6)])).toBe('clear');
    const four = (days: number, value = 4) => aCheckIn(days, { pain: [aPain(value)] });
    expect(saidOf([sign(2, 'weakness'), four(4), four(6)])).toBe('clear');
    expect(saidOf([sign(2, 'weakness'), four(4), four(6, 5)])).toBe('flagged act');
  });
  it('is not closed by check-ins that say nothing, or by another danger sign', () => {
    const nothing = (days: number) => aCheckIn(days, { nothingHurts: false });
    expect(saidOf([sign(2, 'weakness'), nothing(4), nothing(6)])).toBe('flagged act');
    expect(
      on([sign(2, 'weakness'), aCheckIn(4), sign(6, 'swelling')])
        .map(said)
        .slice(0, 2),
    ).toEqual(['flagged act', 'flagged act']);
  });
  it("is closed by a clinician's word about that place", () => {
    const word = { date: day(3), region: null, side: null, words: 'Seen' };
    expect(saidOf([sign(2, 'weakness')], { clinicianWords: [word] })).toBe('clear');
    expect(saidOf([sign(4, 'weakness')], { clinicianWords: [word] })).toBe('flagged act');
  });
  it('speaks of a sign of the start until a clinician did; a word about it says nothing of the same sign later', () => {
    const start = (wordOn: string | null, checkIns: HistoryCheckIn[] = [], date = day(1)) => {
      const intakeSigns = { date, signs: [{ sign: 'chest-pain' as const, wordOn }] };
      const { client } = aHistory();
      return on(checkIns, { client: { ...client, intakeSigns } });
    };
    expect(theFinding(start(null))).toMatchObject({ tier: 'now', sentence: 'Chest pain on **Tue 3 Mar**.' });
    expect(said(theOutcome(start(null, [], day(30))))).toBe('flagged act');
    expect(start(null, [], day(31)).map(({ subject }) => subject.key)).toEqual(['*']);
    expect(said(theOutcome(start(day(30))))).toBe('clear');
    expect(theOutcome(start(day(5)))).toMatchObject({ status: 'clear', why: "a clinician's word" });
    expect(said(theOutcome(start(day(31))))).toBe('flagged act');
    expect(theFinding(start(day(5), [sign(8, 'chest-pain')])).evidence).toMatchObject({
      times: 2,
      date: day(8),
    });
    expect(said(theOutcome(start(null, [aCheckIn(4), aCheckIn(6)])))).toBe('clear');
  });
  it('counts again, and is worse, when it is told again', () => {
    const finding = theFinding(on([sign(2, 'weakness'), sign(4, 'weakness')]));
    expect(finding.evidence).toMatchObject({ times: 2, severity: 2 });
    expect(finding.since).toBe(day(2));
  });
  it('lists two signs in one order, whichever was told first', () => {
    const order = (checkIns: HistoryCheckIn[]) => on(checkIns).map(({ subject }) => subject.key);
    const inOrder = ['swelling:any:any', 'weakness:any:any', '*'];
    expect(order([sign(2, 'weakness'), sign(4, 'swelling')])).toEqual(inOrder);
    expect(order([sign(2, 'swelling'), sign(4, 'weakness')])).toEqual(inOrder);
  });
  it('does not count calm check-ins from before the sign toward closing it', () => {
    const calm = [aCheckIn(2), aCheckIn(4)];
    const finding = theFinding(on([...calm, sign(6, 'weakness')]));
    expect([finding.since, finding.evidence.lowCheckIns]).toEqual([day(6), 0]);
    expect(theFinding(on([...calm, sign(6, 'weakness'), aCheckIn(8)])).evidence.lowCheckIns).toBe(1);
  });
  it('says nothing about a client without one, and covers what was corrected away', () => {
    expect(on([aCheckIn(0)])).toEqual([
      { status: 'clear', kind: 'danger-sign', subject: { key: '*', label: '' }, coversFrom: day(0) },
    ]);
  });
  it('looks at pain in the place of the sign only', () => {
    const place = { region: 'elbow-inner' as const, side: 'right' as const };
    const calm = (days: number, over = {}) =>
      aCheckIn(days, { pain: [aPain(2), aPain(7, { region: 'knee', ...over })] });
    expect(saidOf([sign(2, 'swelling', place), calm(4), calm(6)])).toBe('clear');
    const otherSide = (days: number) => aCheckIn(days, { pain: [aPain(2), aPain(7, { side: 'left' })] });
    expect(saidOf([sign(2, 'swelling', place), otherSide(4), otherSide(6)])).toBe('clear');
    expect(saidOf([sign(2, 'swelling'), calm(4), calm(6)])).toBe('flagged act');
  });
  it('says why it is over, stays over, and starts anew when it comes again', () => {
    const over = [sign(2, 'weakness'), aCheckIn(4), aCheckIn(6)];
    const sore = aCheckIn(8, { pain: [aPain(5)] });
    expect(theOutcome(on(over))).toMatchObject({ why: '2 check-ins of 4 or less' });
    expect(saidOf([...over, sore])).toBe('clear');
    expect(saidOf([...over, aCheckIn(7), sore])).toBe('clear');
    const again = theFinding(on([...over, sign(8, 'weakness')]));
    expect([again.since, again.evidence.times]).toEqual([day(8), 1]);
    expect(theOutcome(on([sign(2, 'weakness')]))).not.toHaveProperty('why');
  });
  it('proposes to ask about tingling that passed, a clinician for the rest', () => {
    const brief = theFinding(on([sign(2, TINGLING, { goneWithinMinute: true })]));
    expect(brief.step.text).toContain('Ask what brought it on');
    expect(brief.evidence.goneWithinMinute).toBe(true);
    expect(theFinding(on([sign(2, 'weakness')])).step.text).toContain('licensed clinician');
  });
});
