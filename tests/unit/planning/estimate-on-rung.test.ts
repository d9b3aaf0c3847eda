import { expect, it } from 'vitest';
import { buildView } from '#lib/checks/view.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { estimateInWords, estimateOnRung } from '#lib/planning/estimate-on-rung.ts';
import { aCheckIn, aHistory, aRung, evening, sets } from '#tests/fixtures/history-builders.ts';

const hold = (position: number, over: Partial<HistoryRung> = {}) =>
  aRung({
    id: `tuck-${position}`,
    ladderId: 'planche',
    position,
    family: 'straight-arm-push',
    measure: 'hold',
    eachSide: true,
    share: 1,
    weights: { 'shoulder-forward': 0.4 + position / 10 },
    ...over,
  });
const RUNGS = [hold(1), hold(2), hold(3)];
function estimate(
  held: [position: number, seconds: number][],
  rungs = RUNGS,
  side: 'left' | 'right' = 'left',
) {
  const checkIns = held.map(([position, seconds], at) =>
    aCheckIn(at, { sets: sets([seconds], { rungId: `tuck-${position}`, side: 'left', planned: 10 }) }),
  );
  const view = buildView(aHistory({ rungs, checkIns }), evening(20));
  const rung = rungs.find(({ position }) => position === 3) ?? hold(3);
  return estimateOnRung(rung, side, { view, rungs });
}

it('carries on the slope of two rungs held of late: 20 s and 10 s at 0.5 and 0.6 give 5.6 s at 0.7, 30 % either way', () => {
  // b = ln(10/20) / ln(0.6/0.5) = -3.80; 10 x (0.7/0.6)^b = 5.57 s, computed by hand.
  const found = estimate([
    [1, 20],
    [2, 10],
  ]);
  expect(found).toMatchObject({ basis: 'own results', low: 3, high: 8, gap: null });
  expect(found && estimateInWords(found, hold(3))).toMatch(
    /^Best hold there, by two rungs held of late: 3 to 8 s\. From two/,
  );
});

it('lays the models beside each other where one rung was held, or the harder was held for longer', () => {
  expect(estimate([[2, 10]])).toMatchObject({ basis: 'models' });
  const longer = estimate([
    [1, 8],
    [2, 10],
  ]);
  expect(longer).toEqual(estimate([[2, 10]]));
});

it('is not given where the rung was held itself, on a side without results, for balance and other measures', () => {
  expect(
    estimate([
      [2, 10],
      [3, 4],
    ]),
  ).toBeUndefined();
  expect(estimate([[2, 10]], RUNGS, 'right')).toBeUndefined();
  const balance = RUNGS.map((rung) => ({ ...rung, family: 'balance' as const }));
  expect(estimate([[2, 10]], balance)).toBeUndefined();
  expect(estimate([[2, 10]], [hold(2), hold(3, { measure: 'reps' })])).toBeUndefined();
});
