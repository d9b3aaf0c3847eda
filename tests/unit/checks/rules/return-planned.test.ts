import { describe, expect, it } from 'vitest';
import { returnTooFast } from '#lib/checks/rules/return-too-fast.ts';
import type { HistoryAbsence } from '#lib/domain/history.ts';
import { judge } from '#tests/fixtures/check-client.ts';
import { aHistory, day, threeAWeek } from '#tests/fixtures/history-builders.ts';

// Eight weeks of training to day 53, a Friday; days off from day 54 on.
const FIRST_OFF = 54;
const usual = threeAWeek(8);
const off = (from: number, to: number | null, kind: HistoryAbsence['kind'] = 'holiday'): HistoryAbsence => ({
  from: day(from),
  to: to === null ? null : day(to),
  kind,
});
const flaggedOn = (days: number, absences: HistoryAbsence[], over: Parameters<typeof aHistory>[0] = {}) =>
  judge(returnTooFast, aHistory({ checkIns: usual, absences, ...over }), days).flatMap((outcome) =>
    outcome.status === 'flagged' && outcome.subject.key === 'planned-return' ? [outcome] : [],
  );
/** Length and last day of the break of which the plan of the return is asked for; null: none is. */
const plannedOn = (days: number, absences: HistoryAbsence[]) => {
  const [finding] = flaggedOn(days, absences);
  return finding ? [finding.evidence.daysOff, finding.evidence.lastDayOff] : null;
};

describe('return-too-fast: the plan of a return that was said', () => {
  it('is asked for from three evenings before the return on, to the last evening off', () => {
    const absences = [off(FIRST_OFF, 73)];
    expect(plannedOn(70, absences)).toBeNull();
    expect(plannedOn(71, absences)).toEqual([20, day(73)]);
    expect(plannedOn(73, absences)).toEqual([20, day(73)]);
    expect(plannedOn(74, absences)).toBeNull();
  });
  it('says how long it was and what a step back in would be', () => {
    const [finding] = flaggedOn(72, [off(FIRST_OFF, 73)]);
    expect(finding?.sentence).toBe(
      'Back after **20 days off**, last day off Thu 14 May: a first week of 70 % of usual would be a step back in.',
    );
    expect(finding).toMatchObject({ level: 'watch', since: day(FIRST_OFF), step: { kind: 'new-plan' } });
  });
  it('is asked for after 10 days off, not after 9', () => {
    expect(plannedOn(62, [off(FIRST_OFF, 62)])).toBeNull();
    expect(plannedOn(63, [off(FIRST_OFF, 63)])).toEqual([10, day(63)]);
  });
  it('is not asked for while the break has no end, or for somebody paused', () => {
    expect(plannedOn(72, [off(FIRST_OFF, null)])).toBeNull();
    expect(flaggedOn(72, [off(FIRST_OFF, 73)], { client: { standing: 'paused' } })).toEqual([]);
  });
  it('takes a break that was made longer for one break, in whatever order it was said', () => {
    const [holiday, ill] = [off(FIRST_OFF, 73), off(74, 80, 'illness')];
    for (const absences of [
      [holiday, ill],
      [ill, holiday],
    ]) {
      // What has not begun is not looked at, so that a night that is rerun says the same.
      expect(plannedOn(73, absences)).toEqual([20, day(73)]);
      expect(plannedOn(74, absences)).toBeNull();
      expect(plannedOn(78, absences)).toEqual([27, day(80)]);
    }
    // One that ends within another ends with that one.
    expect(plannedOn(72, [off(FIRST_OFF, 80), off(60, 73)])).toBeNull();
    expect(plannedOn(80, [off(FIRST_OFF, 80), off(60, 73)])).toEqual([27, day(80)]);
    // One that goes on without an end never ends.
    expect(plannedOn(74, [holiday, off(74, null)])).toBeNull();
    expect(plannedOn(74, [off(FIRST_OFF, 76), off(74, null)])).toBeNull();
  });
  it('takes two short breaks with a day between for two', () => {
    expect(plannedOn(65, [off(FIRST_OFF, 59), off(60, 65)])).toEqual([12, day(65)]);
    expect(plannedOn(65, [off(FIRST_OFF, 58), off(60, 65)])).toBeNull();
  });
});
