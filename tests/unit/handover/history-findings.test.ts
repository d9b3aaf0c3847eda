import { expect, test } from 'vitest';
import { DEFAULT_LIMITS } from '#lib/checks/thresholds.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import { findingsByNight, findingsOn, lastEvening, lastNight } from '#lib/handover/history-findings.ts';
import { aCheckIn, aHistory, aPain, aRung, day, sets } from '#tests/fixtures/history-builders.ts';

const hurtOn = (days: number, over: Parameters<typeof aCheckIn>[1] = {}) =>
  aCheckIn(days, { sets: [], pain: [aPain(7)], ...over });
const calmOn = (days: number) => aCheckIn(days, { sets: [] });
const painDates = (history: ClientHistory, last: string) =>
  findingsByNight(history, last, DEFAULT_LIMITS)
    .filter((row) => row.kind === 'pain-high')
    .map((row) => row.date);

test('what is dated after the evening changes nothing', () => {
  const before = aHistory({ checkIns: [calmOn(0), calmOn(2)] });
  const after = aHistory({ checkIns: [calmOn(0), calmOn(2), hurtOn(3)] });
  expect(findingsOn(after, day(2), DEFAULT_LIMITS)).toEqual(findingsOn(before, day(2), DEFAULT_LIMITS));
});

test('a check-in sent late is known from the evening it was sent, not from its date', () => {
  const late = hurtOn(2, { sentAt: `${day(5)}T12:00:00.000Z` });
  expect(painDates(aHistory({ checkIns: [calmOn(0), late] }), day(8))[0]).toBe(day(5));
  expect(painDates(aHistory({ checkIns: [calmOn(0), hurtOn(2)] }), day(8))[0]).toBe(day(2));
});

test('sent at 02:59 of the night it is known to it, at 03:01 to the next', () => {
  const sent = (time: string) =>
    aHistory({ checkIns: [calmOn(0), hurtOn(2, { sentAt: `${day(3)}T${time}Z` })] });
  expect(painDates(sent('02:59:00'), day(6))[0]).toBe(day(2));
  expect(painDates(sent('03:01:00'), day(6))[0]).toBe(day(3));
});

test('two ladders under one name are two reasons', () => {
  const second = { ladderId: 'pull-b', side: 'both' as const, rungId: 'pull-1b', from: day(0) };
  const both = { sets: [...sets([5, 5, 5]), ...sets([5, 5, 5], { rungId: 'pull-1b' })] };
  const history = aHistory({
    rungs: ['', 'b'].flatMap((end) => {
      const ladderId = end === '' ? 'pull' : 'pull-b';
      return [
        aRung({ id: `pull-1${end}`, ladderId }),
        aRung({ id: `pull-2${end}`, ladderId, position: 2, name: 'Pull-up, slow' }),
      ];
    }),
    placements: [{ ladderId: 'pull', side: 'both', rungId: 'pull-1', from: day(0) }, second],
    checkIns: [aCheckIn(0), aCheckIn(2), aCheckIn(4, both), aCheckIn(6, both)],
  });
  const rows = findingsByNight(history, day(6), DEFAULT_LIMITS).filter(
    (row) => row.kind === 'step-up-earned',
  );
  expect(rows.map((row) => [row.date, row.key, row.subject])).toEqual([
    [day(2), 'pull:pull-1', 'Pull-up'],
    [day(6), 'pull-b:pull-1b', 'Pull-up'],
  ]);
});

test('the last evening is that of the last date; the last night knows what was sent after it', () => {
  const history = aHistory({ checkIns: [hurtOn(2, { sentAt: `${day(5)}T12:00:00.000Z` }), calmOn(0)] });
  expect(lastEvening(history)).toBe(day(2));
  expect(lastNight(history)).toBe(day(5));
  expect(lastEvening(aHistory({ checkIns: [] }))).toBeUndefined();
});
