import { describe, expect, it } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import { buildView } from '#lib/checks/view.ts';
import { loadedInWords, whatLoaded } from '#lib/checks/what-loaded.ts';
import type { HistoryCheckIn } from '#lib/domain/history.ts';
import { aCheckIn, aHistory, aRung, day, evening, sets } from '#tests/fixtures/history-builders.ts';

// Holds of 10 s at half the body weight a hand: "Row" and "Curl" 10 BW s a set on each elbow, "Split" none.
const rung = (id: string, name: string, weights: Parameters<typeof aRung>[0] = {}) =>
  aRung({
    id,
    ladderId: id,
    name,
    measure: 'hold',
    secondsPerRep: null,
    weights: { 'elbow-bending': 1 },
    share: 2,
    ...weights,
  });
const RUNGS = [
  rung('row', 'Row'),
  rung('curl', 'Curl'),
  rung('split', 'Split', { weights: { hamstrings: 1 } }),
];
const did = (days: number, rungId: string, count = 1): HistoryCheckIn =>
  aCheckIn(days, { session: rungId, sets: sets(Array<number>(count).fill(10), { rungId }) });
const loaded = (checkIns: HistoryCheckIn[], until = 70, last = 75) =>
  whatLoaded(
    buildView(aHistory({ rungs: RUNGS, checkIns }), evening(last)),
    { region: 'elbow-front', side: 'right' },
    day(until),
    DEFAULT_LIMITS,
  );

describe('what loaded a place that hurts', () => {
  it('is what was done in the 14 days up to the day, and with it', () => {
    const drill = (days: number) => loaded([did(days, 'row')]);
    expect(drill(57)).toMatchObject({ drills: [{ name: 'Row', load: 10 }], total: 10 });
    expect(drill(70)).toMatchObject({ drills: [{ name: 'Row', load: 10 }], total: 10 });
    expect(drill(56)).toMatchObject({ drills: [], total: 0 });
    expect(drill(71)).toMatchObject({ drills: [], total: 0 });
  });
  it('is named drill by drill, the largest first, of two alike by name; none that does not load it', () => {
    const names = (checkIns: HistoryCheckIn[]) => loaded(checkIns).drills.map((drill) => drill.name);
    expect(names([did(60, 'row'), did(62, 'curl'), did(64, 'split')])).toEqual(['Curl', 'Row']);
    expect(names([did(60, 'curl'), did(62, 'row')])).toEqual(['Curl', 'Row']);
    expect(names([did(60, 'row', 2), did(62, 'curl')])).toEqual(['Row', 'Curl']);
  });
  it('stands against the median of the four fortnights before, where all are in the history', () => {
    // Fortnights that end on the days 56, 42, 28 and 14: 10, 30, 50 and 20 BW s; the median is 25.
    const before = [did(56, 'row'), did(40, 'row', 3), did(20, 'row', 5), did(1, 'row', 2)];
    expect(loaded(before).usual).toBe(25);
    expect(loaded(before, 69).usual).toBe(25); // the first day of the history is the first of the oldest
    expect(loaded(before, 68).usual).toBeUndefined();
  });
  it('is said in one sentence, without a comparison where nothing is usual', () => {
    const all = loaded([
      did(56, 'row'),
      did(40, 'row', 3),
      did(20, 'row', 5),
      did(1, 'row', 2),
      did(65, 'curl', 5),
    ]);
    expect(loadedInWords(all)).toBe(' Loaded most by Curl in the 14 days before, 2 x the usual fortnight.');
    expect(loadedInWords(loaded([did(65, 'curl', 5)]))).toBe(' Loaded most by Curl in the 14 days before.');
    expect(loadedInWords(loaded([did(65, 'split')]))).toBe('');
  });
});
