import { type LoadFigures, loadFigures } from '#lib/checks/load-figures.ts';
import type { LoadSeries } from '#lib/checks/load-series.ts';
import type { Limits } from '#lib/checks/thresholds.ts';
import type { ClientView } from '#lib/checks/types.ts';
import { plainNumber } from '#lib/checks/words.ts';

const WEEK = 7;

/**
 * Every figure of one load series in words, each with what is missing where there is no number: ratio to the three weeks
 * before (this week not in them), exponentially weighted means, change from week to week, monotony and strain.
 */
export function loadFiguresSaid(
  view: ClientView,
  series: LoadSeries,
  unit: string,
  limits: Limits,
): string[] {
  const figures = loadFigures(view, series, limits);
  const { uncoupled, known28, ewmaShort, ewmaLong, weekToWeekPercent } = figures;
  return [
    uncoupled === undefined
      ? `against the mean of the 3 weeks before: no number, ${known28.known} of ${known28.of} days known`
      : `against the mean of the 3 weeks before: ${plainNumber(uncoupled, 2)} ×`,
    ewmaShort === undefined || ewmaLong === undefined
      ? `weighted means: from ${limits['ewma.afterDays']} days here on`
      : `mean day weighted to the last ${limits['ewma.shortDays']} days ${plainNumber(ewmaShort, 0)} ${unit}, to the last ${limits['ewma.longDays']} ${plainNumber(ewmaLong, 0)} ${unit}`,
    weekToWeekPercent === undefined
      ? 'change from the week before: no number, a day of the two weeks is unknown or that week was empty'
      : `change from the week before: ${weekToWeekPercent > 0 ? '+' : ''}${plainNumber(weekToWeekPercent, 0)} %`,
    monotonyInWords(figures),
  ];
}

/** Why there is no monotony: without spread it has no value. */
const WITHOUT: Readonly<Record<string, string>> = {
  'no-training': 'no training in these days',
  'no-variation': 'every day the same',
};

function monotonyInWords({ monotony, week }: LoadFigures): string {
  if ('reason' in monotony) {
    return `monotony and strain: no number, ${WITHOUT[monotony.reason] ?? `${week.known} of ${WEEK} days known`}`;
  }
  return `monotony ${plainNumber(monotony.monotony, 1)}, strain ${plainNumber(monotony.strain, 0)} (${WEEK} days)`;
}
