import type { TimedValue } from '#lib/stats/kendall-s.ts';
import { exactTail, mannKendall } from '#lib/stats/mann-kendall.ts';
import { theilSen } from '#lib/stats/theil-sen.ts';
import { fromSource, type OutsideValue } from '../outside-value.ts';

const series = (times: number[], values: number[]): TimedValue[] =>
  times.map((at, index) => ({ at, value: values[index] ?? Number.NaN }));
const inOrder = (values: number[]) =>
  series(
    values.map((_, index) => index),
    values,
  );

const SULFATE = series(
  [
    89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6, 95.1,
    95.6, 95.8, 96.1, 96.3, 96.6, 96.8,
  ],
  [
    480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650, 620, 830,
    720, 590,
  ],
);
const TIED = inOrder([10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15]);
const SEN = series([1, 2, 3, 4, 10, 12, 18], [9, 15, 19, 20, 45, 55, 78]);
const NILE = inOrder([
  1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
  1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
  1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796, 1040,
  759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874, 848, 890,
  744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740,
]);

/** Smallest S of n untied points whose one-sided exact p is 5 % or less. */
function criticalS(n: number): number | undefined {
  const sizes = new Array<number>(n).fill(1);
  const most = (n * (n - 1)) / 2;
  for (let s = most % 2; s <= most; s += 2) if (exactTail(s, sizes) <= 0.05) return s;
  return undefined;
}

const tail = (n: number, s: number) => exactTail(s, new Array<number>(n).fill(1));

export const TREND: OutsideValue[] = [
  ...fromSource(
    'EPA 2009, Unified Guidance, example 17-6, printout of CRAN EnvStats kendallTrendTest',
    'printed',
    [
      { what: 'sulfate: tau', value: 0.7667984, within: 5e-8, got: () => mannKendall(SULFATE)?.tauA },
      { what: 'sulfate: z', value: 5.107322, within: 5e-7, got: () => mannKendall(SULFATE)?.z },
      {
        what: 'sulfate: two-sided p',
        value: 3.267574e-7,
        within: 5e-13,
        got: () => mannKendall(SULFATE)?.pNormal,
      },
      { what: 'sulfate: slope', value: 26.6666667, within: 1e-6, got: () => theilSen(SULFATE, 0.95)?.slope },
      {
        what: 'sulfate: intercept',
        value: -1909.3333333,
        within: 1e-4,
        got: () => theilSen(SULFATE, 0.95)?.intercept,
      },
      {
        what: 'sulfate: lower end of the slope',
        value: 20,
        within: 1e-6,
        got: () => theilSen(SULFATE, 0.95)?.lower,
      },
    ],
  ),
  ...fromSource('EPA 2006, QA/G-9S, p. 109, as quoted by the EarthSoft help', 'printed', [
    { what: 'ties: S', value: 22, within: 0, got: () => mannKendall(TIED)?.s },
    { what: 'ties: variance of S', value: 155.33, within: 0.005, got: () => mannKendall(TIED)?.variance },
    { what: 'ties: z', value: 1.685, within: 0.0005, got: () => mannKendall(TIED)?.z },
  ]),
  ...fromSource(
    'Gilbert 1987, table A18: critical S one-sided at 95 %, as printed in the EarthSoft EQuIS help',
    'printed',
    [
      [4, 6],
      [5, 8],
      [6, 11],
      [7, 13],
      [8, 16],
      [9, 18],
      [10, 21],
    ].map(([n = 0, s = 0]) => ({
      what: `critical S of ${n} points`,
      value: s,
      within: 0,
      got: () => criticalS(n),
    })),
  ),
  ...fromSource('Gilbert 1987, table A18', 'memory', [
    {
      what: 'n 4: S >= 0, 2, 4',
      value: [0.625, 0.375, 0.167],
      within: 0.0005,
      got: () => [0, 2, 4].map((s) => tail(4, s)),
    },
    {
      what: 'n 7: S >= 1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21',
      value: [0.5, 0.386, 0.281, 0.191, 0.119, 0.068, 0.035, 0.015, 0.0054, 0.0014, 0.0002],
      within: 0.0005,
      got: () => [1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21].map((s) => tail(7, s)),
    },
    {
      what: 'n 9: S >= 0, 2, … 24',
      value: [0.54, 0.46, 0.381, 0.306, 0.238, 0.179, 0.13, 0.09, 0.06, 0.038, 0.022, 0.012, 0.0063],
      within: 0.0005,
      got: () => Array.from({ length: 13 }, (_, index) => tail(9, 2 * index)),
    },
  ]),
  ...fromSource('Sen 1968, J Am Stat Assoc 63:1379-1389, the worked example at 93 %', 'memory', [
    {
      what: 'slope and its ends',
      value: [4, 3.71, 4.38],
      within: 0.0051,
      got: () => ends(theilSen(SEN, 0.93)),
    },
  ]),
  ...fromSource('Nile at Aswan 1871-1970 (R datasets); results of R trend 1.1.6', 'recomputed', [
    { what: 'Nile: S', value: -1387, within: 0, got: () => mannKendall(NILE)?.s },
    {
      what: 'Nile: variance of S',
      value: 112_728.3333,
      within: 5e-5,
      got: () => mannKendall(NILE)?.variance,
    },
    { what: 'Nile: z', value: -4.128066523, within: 5e-9, got: () => mannKendall(NILE)?.z },
    { what: 'Nile: two-sided p', value: 3.65826e-5, within: 5e-10, got: () => mannKendall(NILE)?.p },
    {
      what: 'Nile: slope and its ends',
      value: [-2.6, -3.627906977, -1.428571429],
      within: 1e-9,
      got: () => ends(theilSen(NILE, 0.95)),
    },
  ]),
];

function ends(found: ReturnType<typeof theilSen>) {
  return [found?.slope, found?.lower, found?.upper];
}
