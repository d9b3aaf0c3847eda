import { describe, expect, it } from 'vitest';
import { isUnderLimit, loadedTissues } from '#lib/checks/limits-on-rung.ts';
import { hasClinicianWord } from '#lib/checks/pain-place.ts';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryLimit, HistoryRung } from '#lib/domain/history.ts';
import { aHistory, aRung, day, evening } from '#tests/fixtures/history-builders.ts';

const limit = (over: Partial<HistoryLimit> = {}): HistoryLimit => ({
  tissue: null,
  region: null,
  side: null,
  rule: 'none',
  percent: null,
  from: day(10),
  until: day(20),
  who: 'coach',
  ...over,
});
const under = (one: HistoryLimit, days = 15, rung: HistoryRung = aRung()) =>
  isUnderLimit(
    buildView(aHistory({ limits: [one] }), evening(40)),
    { rung, side: 'both' },
    day(days),
    DEFAULT_LIMITS,
  );

describe('a limit on a rung', () => {
  it('holds from its first day to its last, both with it', () => {
    expect([9, 10, 20, 21].map((days) => under(limit(), days))).toEqual([false, true, true, false]);
    expect(under(limit({ until: null }), 40)).toBe(true);
  });
  it('holds for rungs that load what it names', () => {
    expect(under(limit({ tissue: 'elbow-bending' }))).toBe(true);
    expect(under(limit({ tissue: 'neck' }))).toBe(false);
    expect(under(limit({ region: 'elbow-front' }))).toBe(true);
    expect(under(limit({ region: 'neck' }))).toBe(false);
  });
  it('holds for all rungs where it names no place, but for floor and overhead', () => {
    expect(under(limit({ rule: 'reduced' }))).toBe(true);
    expect(under(limit({ rule: 'no-floor' }))).toBe(false);
    expect(under(limit({ rule: 'no-overhead' }))).toBe(false);
    const weights = (tissue: 'wrist-back' | 'shoulder-overhead') => aRung({ weights: { [tissue]: 0.9 } });
    expect(under(limit({ rule: 'no-floor' }), 15, weights('wrist-back'))).toBe(true);
    expect(under(limit({ rule: 'no-floor' }), 15, weights('shoulder-overhead'))).toBe(false);
    expect(under(limit({ rule: 'no-overhead' }), 15, weights('shoulder-overhead'))).toBe(true);
    expect(under(limit({ rule: 'no-overhead' }), 15, weights('wrist-back'))).toBe(false);
  });
  it('counts a tissue as loaded from the weight that is set for it', () => {
    const from = DEFAULT_LIMITS['tissue.loaded'];
    const loaded = (weight: number) => loadedTissues(aRung({ weights: { neck: weight } }), DEFAULT_LIMITS);
    expect(loaded(from)).toEqual(['neck']);
    expect(loaded(from - 0.01)).toEqual([]);
  });
});

describe('a word of a clinician', () => {
  const word = { date: day(10), region: 'elbow-inner', side: 'right', words: 'May train' } as const;
  const has = (
    place: Parameters<typeof hasClinicianWord>[1],
    within: { from?: string; to: string },
    over: Partial<{ region: null; side: null }> = {},
  ) =>
    hasClinicianWord(
      buildView(aHistory({ clinicianWords: [{ ...word, ...over }] }), evening(40)),
      place,
      within,
    );
  const elbow = { region: 'elbow-inner', side: 'right' } as const;
  it('counts from the first day asked to the last, both with it', () => {
    expect(has(elbow, { from: day(10), to: day(12) })).toBe(true);
    expect(has(elbow, { from: day(11), to: day(12) })).toBe(false);
    expect(has(elbow, { from: day(8), to: day(10) })).toBe(true);
    expect(has(elbow, { from: day(8), to: day(9) })).toBe(false);
    expect(has(elbow, { to: day(10) })).toBe(true);
  });
  it('is about its own place and side, and about all where it names none', () => {
    const to = { to: day(12) };
    expect(has({ region: 'neck', side: 'right' }, to)).toBe(false);
    expect(has({ region: 'elbow-inner', side: 'left' }, to)).toBe(false);
    expect(has({ region: 'neck', side: 'right' }, to, { region: null })).toBe(true);
    expect(has({ region: 'elbow-inner', side: 'left' }, to, { side: null })).toBe(true);
    expect(has({ region: null, side: null }, to)).toBe(false);
  });
});
