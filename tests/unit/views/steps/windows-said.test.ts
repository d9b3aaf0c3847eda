import { expect, it } from 'vitest';
import { DEFAULT_LIMITS, limitsWith } from '#lib/checks/thresholds.ts';
import { owedTo, toRow } from '#lib/views/board-row.ts';
import { pastReasons } from '#lib/views/client-past-reasons.ts';
import { stepsTried } from '#lib/views/steps/steps-tried.ts';
import { triedInWords } from '#lib/views/steps/tried-in-words.ts';
import { windowsSaid } from '#lib/views/steps/windows-said.ts';
import { aClient, aReason } from '../board-fixture.ts';

const TODAY = '2026-11-26';
const told = (windowDays: number, changes: string[] = []) => ({
  windowDays,
  outcome: 'same' as const,
  evidence: { said: 'median: before 4; at the end 4', changes },
});

it('every window of the kind is said: told, waiting for the night, still to come', () => {
  const step = {
    reasonKind: 'pain-rising' as const,
    from: '2026-11-11',
    told: [told(7, ['away (holiday) Mon 16 Nov'])],
  };
  expect(windowsSaid(step, TODAY, DEFAULT_LIMITS)).toEqual([
    {
      windowDays: 7,
      outcome: 'same',
      words: 'the same after 7 days',
      said: 'median: before 4; at the end 4',
      changes: 'Two changes in these weeks: beside this, away (holiday) Mon 16 Nov',
    },
    {
      windowDays: 14,
      outcome: 'not-yet',
      words: 'not yet: the next night tells it',
      said: '',
      changes: '',
    },
    {
      windowDays: 28,
      outcome: 'not-yet',
      words: 'not yet: 28 days are over on Wed 9 Dec',
      said: '',
      changes: '',
    },
  ]);
});

it('a window that was told stays when the settings no longer ask for it', () => {
  const limits = limitsWith({ 'betterSince.loadDays': 21 });
  const step = { reasonKind: 'load-jump' as const, from: '2026-10-01', told: [told(14)] };
  expect(windowsSaid(step, TODAY, limits).map((one) => one.windowDays)).toEqual([14, 21]);
});

it('counts three changes as three', () => {
  const step = { reasonKind: 'load-jump' as const, from: '2026-10-01', told: [told(14, ['a', 'b'])] };
  expect(windowsSaid(step, TODAY, DEFAULT_LIMITS)[0]?.changes).toBe(
    '3 changes in these weeks: beside this, a; b',
  );
});

it('a step says what was done, for what, and when nothing is measured of it', () => {
  const base = {
    id: 's',
    reasonId: 'r',
    stepKind: 'step-up' as const,
    words: 'Up',
    by: 'Ana',
    from: '2026-11-12',
    told: [],
  };
  const [up] = stepsTried([{ ...base, reasonKind: 'step-up-earned' }], TODAY, DEFAULT_LIMITS);
  expect(up).toMatchObject({ what: 'Step up, for: step up earned', when: 'Thu 12 Nov', windows: [] });
  expect(up?.notFollowed).not.toBe('');
  const [back] = stepsTried(
    [{ ...base, stepKind: 'one-rung-back', reasonKind: 'stalled' }],
    TODAY,
    DEFAULT_LIMITS,
  );
  expect(back).toMatchObject({ what: 'One rung back, for: stalled', notFollowed: '' });
  expect(back?.windows).toHaveLength(2);
});

it('says the newest answer in a few words on the row', () => {
  expect(triedInWords({ takenOn: '2026-11-12', windowDays: 14, outcome: 'same', today: TODAY })).toBe(
    'step tried Thu 12 Nov: the same after 14 days',
  );
});

it('a closed reason says when, why, what a coach said and what it came to', () => {
  const closed = {
    id: 'r',
    kind: 'pain-rising' as const,
    tier: 'today' as const,
    sentence: 'Sore.',
    raisedAt: '2026-11-03T03:00:00.000Z',
    closedAt: '2026-11-10T03:00:00.000Z',
    closedWhy: '2 clear nights',
    verdicts: [{ rightToTell: true, text: 'well seen', by: 'Ana' }],
  };
  const about = { zone: 'UTC', today: TODAY };
  const step = { reasonId: 'r', reasonKind: 'pain-rising' as const, from: '2026-11-04', told: [told(7)] };
  const [tried] = pastReasons([closed], { steps: [step], alone: [] }, about);
  expect(tried).toEqual({
    id: 'r',
    tier: 'today',
    kind: 'Pain rising',
    sentence: 'Sore.',
    when: 'Tue 3 Nov to Tue 10 Nov, closed: 2 clear nights',
    verdict: 'right to tell, said Ana: “well seen”',
    outcome: 'step taken Wed 4 Nov: the same after 7 days',
  });
  expect(pastReasons([closed], { steps: [], alone: [step] }, about)[0]?.outcome).toBe(
    'nothing done: the same after 7 days',
  );
  expect(pastReasons([{ ...closed, verdicts: [] }], { steps: [], alone: [] }, about)[0]).toMatchObject({
    verdict: '',
    outcome: '',
  });
});

it('stands first among the further words of the row, where the reason leads it', () => {
  const tried = { takenOn: '2026-11-11', windowDays: 7, outcome: 'better' as const };
  const client = { ...aClient({ id: 'c' }) };
  const reasons = [
    aReason({ clientId: 'c', tried, points: 2 }),
    aReason({ clientId: 'c', kind: 'slipping' }),
  ];
  const owed = owedTo(client, reasons);
  expect(owed && toRow(owed, TODAY).others[0]).toBe('step tried Wed 11 Nov: better after 7 days');
});
