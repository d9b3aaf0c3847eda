import { describe, expect, it } from 'vitest';
import { painLingering } from '#lib/checks/rules/pain-lingering.ts';
import { runChecks } from '#lib/checks/run.ts';
import type { HistoryCheckIn, HistoryPain } from '#lib/domain/history.ts';
import { judge, said, theFinding } from '#tests/fixtures/check-client.ts';
import { aCheckIn, aHistory, aPain, evening } from '#tests/fixtures/history-builders.ts';

const sore = (days: number, value: number, over: Partial<HistoryPain> = {}) =>
  aCheckIn(days, {
    pain: [aPain(value, { region: 'shoulder-front', side: 'left', kind: 'muscle', ...over })],
  });
const saidOf = (checkIns: HistoryCheckIn[], days: number) =>
  judge(painLingering, aHistory({ checkIns }), days).map(said);
const three = [sore(10, 7), sore(12, 8), sore(14, 7)];

describe('sore muscles', () => {
  it('are a note for the client page after 3 days of 7 or more', () => {
    const finding = theFinding(judge(painLingering, aHistory({ checkIns: three }), 14));
    expect(finding).toMatchObject({
      kind: 'pain-lingering',
      subject: { key: 'sore:shoulder-front:left' },
      level: 'note',
      tier: null,
      points: 0,
      evidence: { days: 3, highest: 8, from: 7 },
    });
    expect(finding.sentence).toBe(
      'Left shoulder, front: sore muscle, 7 or more on **3 days** of 7, highest 8.',
    );
  });
  it('are not named for 6, for 2 days, for two check-ins of one day, or in another place', () => {
    expect(saidOf([sore(10, 7), sore(12, 6), sore(14, 7)], 14)).toEqual([]);
    expect(saidOf(three.slice(1), 14)).toEqual([]);
    expect(saidOf([...three.slice(1), { ...sore(14, 9), id: 'again', session: 'B' }], 14)).toEqual([]);
    expect(saidOf([...three.slice(1), sore(10, 9, { side: 'right' })], 14)).toEqual([]);
    expect(saidOf([...three.slice(1), sore(10, 9, { kind: 'cramp' })], 14)).toEqual([]);
  });
  it('count within a week: the first day 6 days before the last, not 7', () => {
    expect(saidOf([sore(8, 7), sore(12, 7), sore(14, 7)], 14)).toEqual(['flagged note']);
    expect(saidOf([sore(7, 7), sore(12, 7), sore(14, 7)], 14)).toEqual(['clear']);
  });
  it('are cleared by what the client says, not by silence or by other places', () => {
    const other = (days: number) => aCheckIn(days, { pain: [aPain(1)] });
    const soreOf = (checkIns: HistoryCheckIn[], days: number) =>
      judge(painLingering, aHistory({ checkIns }), days)
        .filter((outcome) => outcome.subject.key.startsWith('sore:'))
        .map(said);
    expect(soreOf([...three, other(18), other(20)], 20)).toEqual(['flagged note']);
    expect(soreOf(three, 20)).toEqual(['flagged note']);
    expect(soreOf(three, 21)).toEqual([
      'not-enough-history: no check-in in 7 days says how sore left shoulder, front is',
    ]);
    expect(soreOf([...three, aCheckIn(17)], 17)).toEqual(['clear']); // the week up to it: 2 sore days
    expect(soreOf([...three, aCheckIn(16)], 16)).toEqual(['flagged note']);
    expect(soreOf([...three, sore(17, 2)], 17)).toEqual(['clear']);
  });
  it('change nothing else that is said', () => {
    const without = three.map((checkIn) => ({ ...checkIn, pain: [] }));
    const all = (checkIns: HistoryCheckIn[]) =>
      runChecks(aHistory({ checkIns }), evening(14)).filter((one) => !one.subject.key.startsWith('sore:'));
    expect(all(three)).toEqual(all(without));
  });
  it('stand apart from a joint that hurts in the same place', () => {
    const both = three.map((checkIn) => ({
      ...checkIn,
      pain: [...checkIn.pain, aPain(4, { region: 'shoulder-front', side: 'left' })],
    }));
    const keys = runChecks(aHistory({ checkIns: both }), evening(14))
      .filter((one) => one.kind === 'pain-lingering')
      .map((one) => `${one.subject.key} ${one.status}`);
    expect(keys).toEqual(['shoulder-front:left not-enough-history', 'sore:shoulder-front:left flagged']);
  });
  it('are said muscle by muscle, in order of place and side', () => {
    const both = three.map((checkIn) => ({
      ...checkIn,
      pain: [...checkIn.pain.map((pain) => ({ ...pain, side: 'right' as const })), ...checkIn.pain],
    }));
    expect(
      judge(painLingering, aHistory({ checkIns: both }), 14).map((outcome) => outcome.subject.key),
    ).toEqual(['sore:shoulder-front:left', 'sore:shoulder-front:right']);
  });
});
