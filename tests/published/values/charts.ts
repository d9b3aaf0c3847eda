import { cusum } from '#lib/stats/cusum.ts';
import { ewma } from '#lib/stats/ewma.ts';
import { fromSource, type OutsideValue } from '../outside-value.ts';

const MEANS = [
  324.925, 324.675, 324.725, 324.35, 325.35, 325.225, 324.125, 324.525, 325.225, 324.6, 324.625, 325.15,
  328.325, 327.25, 327.825, 328.5, 326.675, 327.775, 326.875, 328.35,
];
const VISCOSITY = [
  102.0, 94.8, 98.3, 98.4, 102.0, 98.5, 99.0, 97.7, 100.0, 98.1, 101.3, 98.7, 101.1, 98.4, 97.0, 96.7, 100.3,
  101.4, 97.2, 101.0,
];
const WEIGHTED = [
  52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4,
  53.6, 52.1,
];

/** The sums below the target are those above it of the values with the sign turned. */
const below = (values: number[], target: number, slack: number) =>
  cusum(
    values.map((value) => -value),
    -target,
    slack,
  );

export const CHARTS: OutsideValue[] = [
  ...fromSource('NIST/SEMATECH e-Handbook of Statistical Methods 2012, 6.3.2.3', 'printed', [
    {
      what: 'sums above 325, slack 0.3175, 20 groups',
      value: [0, 0, 0, 0, 0.03, 0, 0, 0, 0, 0, 0, 0, 3.01, 4.94, 7.45, 10.63, 11.99, 14.44, 16.0, 19.04],
      within: 0.005 + 1e-9,
      got: () => cusum(MEANS, 325, 0.3175),
    },
    {
      what: 'sums below 325, slack 0.3175, 20 groups',
      value: [0, 0.01, 0, 0.33, 0, 0, 0.56, 0.72, 0.17, 0.25, 0.31, 0, 0, 0, 0, 0, 0, 0, 0, 0],
      within: 0.005 + 1e-9,
      got: () => below(MEANS, 325, 0.3175),
    },
  ]),
  ...fromSource(
    'Montgomery & Runger 2003, Applied Statistics and Probability for Engineers, example 16-6',
    'printed',
    [
      {
        what: 'sums above 99, slack 1',
        value: [2.0, 0, 0, 0, 2.0, 0.5, 0, 0, 0, 0, 1.3, 0, 1.1, 0, 0, 0, 0.3, 1.7, 0, 1.0],
        within: 1e-9,
        got: () => cusum(VISCOSITY, 99, 1),
      },
      {
        what: 'sums below 99, slack 1',
        value: [0, 3.2, 2.9, 2.5, 0, 0, 0, 0.3, 0, 0, 0, 0, 0, 0, 1.0, 2.3, 0, 0, 0.8, 0],
        within: 1e-9,
        got: () => below(VISCOSITY, 99, 1),
      },
    ],
  ),
  ...fromSource('NIST/SEMATECH e-Handbook of Statistical Methods 2012, 6.3.2.4', 'printed', [
    {
      // 2 / (days + 1) is the printed 0.3 at 17/3 days; the target 50 stands before the first value.
      what: 'exponentially weighted means, weight 0.3, from 50 on',
      value: [
        50.6, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52, 50.05,
        49.38, 49.92, 50.73, 51.23, 51.94, 51.99,
      ],
      within: 0.005,
      got: () => WEIGHTED.map((_, index) => ewma([50, ...WEIGHTED.slice(0, index + 1)], 17 / 3)),
    },
  ]),
];
