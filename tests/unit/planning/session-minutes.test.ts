import { describe, expect, it } from 'vitest';
import { sessionMinutes } from '#lib/planning/session-minutes.ts';
import { aPlan, aPlanItem, aRung } from '#tests/fixtures/history-builders.ts';

const RUNGS = new Map(
  [
    aRung(),
    aRung({ id: 'hold', measure: 'hold', family: 'balance', secondsPerRep: null }),
    aRung({ id: 'side', measure: 'hold', family: 'straight-arm-push', eachSide: true }),
    aRung({
      id: 'tries',
      measure: 'made-tried',
      family: 'balance',
      pass: { sets: 1, target: 8, days: 2, tries: 10 },
      secondsPerRep: 3,
    }),
    aRung({ id: 'range', measure: 'range-up', family: 'mobility', secondsPerRep: null }),
  ].map((rung) => [rung.id, rung]),
);

describe('minutes of a session', () => {
  it('adds work, settling and rest of each set', () => {
    // 3 x (5 reps x 4 s + 5 s + 120 s) = 435 s
    expect(sessionMinutes(aPlan(), RUNGS)).toEqual([{ label: 'A', minutes: 7 }]);
  });

  it('counts each side, tries and ranges, and rests as long as the family needs', () => {
    const items = [
      aPlanItem({ session: 'A', rungId: 'hold', sets: 4, target: 20 }), // 4 x 85 = 340 s
      aPlanItem({ session: 'A', rungId: 'side', sets: 2, target: 10 }), // 2 x 2 x 135 = 540 s
      aPlanItem({ session: 'B', rungId: 'tries', sets: 1, target: 8 }), // 30 + 5 + 60 = 95 s
      aPlanItem({ session: 'B', rungId: 'range', sets: 2, target: 150 }), // 2 x 65 = 130 s
    ];
    expect(sessionMinutes(aPlan({ items }), RUNGS)).toEqual([
      { label: 'A', minutes: 15 },
      { label: 'B', minutes: 4 },
    ]);
  });

  it('takes the session’s own rest and warm-up, and minutes where a line asks for minutes', () => {
    const items = [aPlanItem({ sets: 3 }), aPlanItem({ rungId: 'hold', target: null, minutes: 10 })];
    const plan = { ...aPlan({ items }), sessions: [{ label: 'A', restSeconds: 35, warmUpMinutes: 8 }] };
    // 3 x (20 + 5 + 35) = 180 s, 10 min, 8 min
    expect(sessionMinutes(plan, RUNGS)).toEqual([{ label: 'A', minutes: 21 }]);
  });

  it('counts nothing for a rung that is not there', () => {
    expect(sessionMinutes(aPlan({ items: [aPlanItem({ rungId: 'gone' })] }), RUNGS)).toEqual([
      { label: 'A', minutes: 0 },
    ]);
  });
});
