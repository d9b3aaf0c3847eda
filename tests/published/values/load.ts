import { sessionLoadOf } from '#lib/checks/day-facts.ts';
import { coupledRatio } from '#lib/stats/coupled-ratio.ts';
import { ewma } from '#lib/stats/ewma.ts';
import { monotony } from '#lib/stats/monotony.ts';
import { seededDraws } from '#lib/stats/seeded-draws.ts';
import { uncoupledRatio } from '#lib/stats/uncoupled-ratio.ts';
import { aCheckIn } from '#tests/fixtures/history-builders.ts';
import { fromSource, type Line, type OutsideValue } from '../outside-value.ts';

const PRINTED = [940, 50, 840, 280, 180, 390, 50, 390, 280];
const figures = () => {
  const found = monotony(PRINTED);
  if ('reason' in found) throw new Error(found.reason);
  return found;
};
const session = (effort: number, minutes: number, load: number): Line => ({
  what: `rating ${effort} x ${minutes} min, AU`,
  value: load,
  within: 0,
  got: () => sessionLoadOf([aCheckIn(0, { effort, minutes })]),
});

const FIRST_ATHLETE = [...Array<number>(21).fill(300), ...Array<number>(7).fill(500)];
const HOW_FIRST =
  'the printed daily loads are not at hand: b a day for 21 days, 5b/3 for 7 days gives the printed 1.43';

/** Correlation of the latest week with the mean it is divided by, over 20,000 draws of four alike weeks. */
function couplingOf(ratio: typeof coupledRatio): number {
  const draws = seededDraws('coupling');
  const pairs = Array.from({ length: 20_000 }, () => {
    const week = () => 1000 + 100 * draws.normal();
    const latest = week();
    return [latest, latest / (ratio(latest, [week(), week(), week()]) ?? Number.NaN)] as const;
  });
  const mean = (of: (pair: readonly [number, number]) => number) =>
    pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  const [x, y] = [mean((pair) => pair[0]), mean((pair) => pair[1])];
  const together = mean((pair) => (pair[0] - x) * (pair[1] - y));
  return together / Math.sqrt(mean((pair) => (pair[0] - x) ** 2) * mean((pair) => (pair[1] - y) ** 2));
}

export const LOAD: OutsideValue[] = [
  // Three more rows of the table are not rating x minutes in print (940, 390, 390) and are left out here.
  ...fromSource('Foster et al. 2001, J Strength Cond Res 15(1):109-115, table 5', 'printed', [
    session(2, 25, 50),
    session(7, 120, 840),
    session(7, 40, 280),
    session(3, 60, 180),
    {
      what: 'week of nine sessions: total, AU',
      value: 3400,
      within: 1e-9,
      got: () => figures().strain / figures().monotony,
    },
    { what: 'week of nine sessions: monotony', value: 1.26, within: 0.005, got: () => figures().monotony },
    {
      // Printed as 3,400 x the rounded 1.26; rounding moves it by at most 3,400 x 0.005.
      what: 'week of nine sessions: strain, AU',
      value: 4284,
      within: 17,
      got: () => figures().strain,
    },
  ]),
  ...fromSource('Williams et al. 2017, Br J Sports Med 51(3):209-210, first athlete on day 28', 'derived', [
    {
      what: 'rolling ratio',
      how: HOW_FIRST,
      value: 1.43,
      within: 0.005,
      got: () => coupledRatio(3500, [2100, 2100, 2100]),
    },
    {
      what: 'exponentially weighted ratio',
      how: HOW_FIRST,
      value: 1.25,
      within: 0.005,
      got: () => (ewma(FIRST_ATHLETE, 7) ?? Number.NaN) / (ewma(FIRST_ATHLETE, 28) ?? Number.NaN),
    },
  ]),
  ...fromSource(
    'Lolli et al. 2019, Br J Sports Med 53(15):921-922: coupling alone correlates the two loads near 0.50',
    'derived',
    [
      {
        // Four standard errors of a correlation of 20,000 pairs: 4 x (1 - 0.25) / sqrt(20,000) = 0.021.
        what: 'coupled: correlation of the week with its mean of four',
        how: 'alike independent weeks: 1 / sqrt(4) = 0.5',
        value: 0.5,
        within: 0.021,
        got: () => couplingOf(coupledRatio),
      },
      {
        what: 'uncoupled: correlation of the week with the three before',
        how: 'no week in common: 0; four standard errors are 4 / sqrt(20,000) = 0.028',
        value: 0,
        within: 0.028,
        got: () => couplingOf(uncoupledRatio),
      },
    ],
  ),
];
