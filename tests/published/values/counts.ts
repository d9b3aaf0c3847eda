import { binomialTail } from '#lib/stats/binomial-tail.ts';
import { coefficientOfVariation } from '#lib/stats/coefficient-of-variation.ts';
import { fisherExact } from '#lib/stats/fisher-exact.ts';
import { kaplanMeier, kaplanMeierMedian } from '#lib/stats/kaplan-meier.ts';
import { median } from '#lib/stats/median.ts';
import { medianAbsoluteDeviation } from '#lib/stats/median-absolute-deviation.ts';
import { normalCdf } from '#lib/stats/normal-cdf.ts';
import { normalQuantile } from '#lib/stats/normal-quantile.ts';
import { signTest } from '#lib/stats/sign-test.ts';
import { fromSource, type Line, type OutsideValue } from '../outside-value.ts';

const TREATED = [
  ...[6, 6, 6, 7, 10, 13, 16, 22, 23].map((time) => ({ time, ended: true })),
  ...[6, 9, 10, 11, 17, 19, 20, 25, 32, 32, 34, 35].map((time) => ({ time, ended: false })),
];
const PLACEBO = [1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23];

function survival(time: number, atRisk: number, share: number, error: number): Line[] {
  const step = () => kaplanMeier(TREATED).find((each) => each.time === time);
  return [
    { what: `week ${time}: at risk`, value: atRisk, within: 0, got: () => step()?.atRisk },
    { what: `week ${time}: share still running`, value: share, within: 0.0005, got: () => step()?.share },
    { what: `week ${time}: standard error`, value: error, within: 0.00005, got: () => step()?.standardError },
  ];
}

const COPPER = [
  2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2,
  3.5, 3.6, 3.7, 3.7,
];

const MAVRO = [
  18, 17, 18, 19, 18, 17, 15, 14, 15, 15, 17, 18, 18, 19, 19, 21, 20, 16, 14, 13, 13, 15, 15, 16, 15, 14, 13,
  14, 15, 14, 15, 16, 15, 16, 19, 20, 20, 21, 22, 23, 24, 25, 27, 26, 26, 26, 27, 26, 25, 24,
].map((tenThousandths) => Number(`2.00${tenThousandths}`));
const alternating = (middle: number, low: number, high: number) => [
  middle,
  ...Array.from({ length: 1000 }, (_, index) => (index % 2 === 0 ? low : high)),
];

/** `within` is a part of the value, for the digits that doubles can hold. */
function variation(name: string, values: number[], mean: number, deviation: number, within: number): Line {
  const value = (deviation / mean) * 100;
  const how = `certified SD / certified mean x 100 = ${deviation} / ${mean} x 100`;
  return {
    what: `${name}: variation, %`,
    how,
    value,
    within: within * value,
    got: () => coefficientOfVariation(values),
  };
}

export const COUNTS: OutsideValue[] = [
  ...fromSource(
    'Freireich et al. 1963, 6-MP arm; survfit output of CRAN MASS (Venables & Ripley 2002), data gehan',
    'printed',
    [
      ...survival(6, 21, 0.857, 0.0764),
      ...survival(7, 17, 0.807, 0.0869),
      ...survival(10, 15, 0.753, 0.0963),
      ...survival(13, 12, 0.69, 0.1068),
      ...survival(16, 11, 0.627, 0.1141),
      ...survival(22, 7, 0.538, 0.1282),
      ...survival(23, 6, 0.448, 0.1346),
    ],
  ),
  ...fromSource('Freireich et al. 1963; median by R and SciPy', 'recomputed', [
    { what: 'median of the 6-MP arm, weeks', value: 23, within: 0, got: () => kaplanMeierMedian(TREATED) },
    {
      what: 'median of the placebo arm, weeks',
      value: 8,
      within: 0,
      got: () => kaplanMeierMedian(PLACEBO.map((time) => ({ time, ended: true }))),
    },
  ]),
  ...fromSource(
    'AMC 1989, copper in flour; reference output of CRAN MASS (Venables & Ripley 2002), data chem',
    'printed',
    [
      { what: 'copper: median', value: 3.385, within: 1e-12, got: () => median(COPPER) },
      {
        what: 'copper: scaled MAD',
        value: 0.526323,
        within: 5e-7,
        got: () => medianAbsoluteDeviation(COPPER),
      },
      {
        what: 'copper: variation, %',
        basis: 'derived',
        how: 'printed SD / printed mean x 100 = 5.297396 / 4.280417 x 100',
        value: 123.7589,
        within: 5e-5,
        got: () => coefficientOfVariation(COPPER),
      },
    ],
  ),
  ...fromSource('NIST Statistical Reference Datasets 1998, univariate, certified values', 'derived', [
    variation('Mavro', MAVRO, 2.001856, 0.000429123454003053, 1e-11),
    variation('NumAcc1', [10_000_001, 10_000_003, 10_000_002], 10_000_002, 1, 1e-13),
    variation('NumAcc2', alternating(1.2, 1.1, 1.3), 1.2, 0.1, 1e-12),
    variation('NumAcc3', alternating(1_000_000.2, 1_000_000.1, 1_000_000.3), 1_000_000.2, 0.1, 1e-9),
    variation('NumAcc4', alternating(10_000_000.2, 10_000_000.1, 10_000_000.3), 10_000_000.2, 0.1, 1e-8),
  ]),
  ...fromSource('Leys et al. 2013, J Exp Soc Psychol 49:764-766', 'memory', [
    {
      what: 'middle and scaled MAD of 1, 3, 3, 6, 8, 10, 10, 1000',
      value: [7, 5.1891],
      within: 5e-5,
      got: () => [
        median([1, 3, 3, 6, 8, 10, 10, 1000]),
        medianAbsoluteDeviation([1, 3, 3, 6, 8, 10, 10, 1000]),
      ],
    },
  ]),
  ...fromSource('Fisher 1935, The Design of Experiments, ch. 2 (tea)', 'memory', [
    {
      what: 'tea: 3 of 4 right',
      value: 17 / 70,
      within: 1e-12,
      got: () => fisherExact({ hits: 3, of: 4, otherHits: 1, otherOf: 4 }),
    },
    {
      what: 'tea: all right',
      value: 1 / 70,
      within: 1e-12,
      got: () => fisherExact({ hits: 4, of: 4, otherHits: 0, otherOf: 4 }),
    },
  ]),
  ...fromSource('Fisher 1936, convictions of twins (R help of fisher.test, one-sided)', 'memory', [
    {
      what: 'twins',
      value: 0.0004652,
      within: 5e-8,
      got: () => fisherExact({ hits: 10, of: 12, otherHits: 3, otherOf: 18 }),
    },
  ]),
  ...fromSource('Darwin 1876, maize, 13 of 15 pairs; binom.test of R, halved', 'recomputed', [
    { what: 'maize: sign test', value: 0.00738525390625 / 2, within: 1e-15, got: () => signTest(13, 2) },
  ]),
  ...fromSource('binom.test of R 4.6.0, half the two-sided p at 0.5', 'recomputed', [
    { what: '9 of 12 on one side', value: 0.14599609375 / 2, within: 1e-15, got: () => signTest(9, 3) },
    {
      what: '5 of 5: can not reach 0.05 two-sided',
      value: 0.0625 / 2,
      within: 1e-15,
      got: () => signTest(5, 0),
    },
    { what: '9 of 10', value: 0.021484375 / 2, within: 1e-12, got: () => signTest(9, 1) },
    {
      what: '72 to 88 of 100 at 0.8',
      value: 0.9674,
      within: 5e-6,
      got: () => {
        const atMost = (successes: number) =>
          binomialTail({ successes, trials: 100, chance: 0.8, tail: 'lower' });
        return (atMost(88) ?? Number.NaN) - (atMost(71) ?? Number.NaN);
      },
    },
  ]),
  ...fromSource('Abramowitz & Stegun 1964, tables 26.1 and 26.5', 'memory', [
    {
      what: 'share of a normal under 1, 2, 3',
      value: [0.841344746069, 0.977249868052, 0.998650101968],
      within: 5e-12,
      got: () => [1, 2, 3].map(normalCdf),
    },
    {
      what: 'quantiles at 0.9, 0.95, 0.975, 0.995',
      value: [1.28155, 1.64485, 1.95996, 2.57583],
      within: 5e-6,
      got: () => [0.9, 0.95, 0.975, 0.995].map(normalQuantile),
    },
  ]),
];
