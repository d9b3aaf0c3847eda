import type { Forecast, ForecastStep } from '#lib/checks/forecast.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { monthName } from '#lib/domain/month-names.ts';
import { exactDate } from './say-date.ts';

/** One rung of the way, its range as a stroke from `from` to `to` with a mark at `middle`, percent of the width. */
export type DrawnStep = {
  key: string;
  name: string;
  /** "March 27 to August 27". */
  months: string;
  /** Said and shown on hover: all three dates in full. */
  exact: string;
  from: number;
  middle: number;
  to: number;
  /** One of the rungs that decide how wide the range is. */
  decides: boolean;
};
export type DrawnForecast = {
  steps: DrawnStep[];
  /** First days of months or years with their names, percent of the width. */
  ticks: { at: number; label: string }[];
  /** "Dead hang to Free hold decide most: 9 of the 14 weeks of doubt." */
  decided: string;
};

/** More rungs than these are drawn as the next ones, those that decide, and the last. */
const MOST_DRAWN = 5;
/** Rungs that together make this part of the range decide it. */
const DECIDING_SHARE = 0.5;
const DAYS_A_WEEK = 7;

/** The ranges of a forecast on one line of time from today on, and the rungs that decide how wide it is. */
export function drawnForecast(
  { steps, late }: Pick<Forecast, 'steps' | 'late'>,
  today: string,
): DrawnForecast {
  const span = Math.max(1, daysBetween(today, late));
  const at = (date: string) => Math.max(0, Math.min(100, (100 * daysBetween(today, date)) / span));
  const deciding = decidingSteps(steps);
  const kept = steps.filter(
    (step, index) =>
      steps.length <= MOST_DRAWN || index < 2 || index === steps.length - 1 || deciding.includes(step),
  );
  return {
    steps: kept.map((step) => ({
      key: step.rungId,
      name: step.name,
      months:
        monthAndYear(step.early) === monthAndYear(step.late)
          ? monthAndYear(step.late)
          : `${monthAndYear(step.early)} to ${monthAndYear(step.late)}`,
      exact: `1 of 10 by ${exactDate(step.early)}, 5 of 10 by ${exactDate(step.middle)}, 9 of 10 by ${exactDate(step.late)}`,
      from: at(step.early),
      middle: at(step.middle),
      to: at(step.late),
      decides: deciding.includes(step),
    })),
    ticks: ticksOf(today, late).map((date) => ({ at: at(date), label: tickLabel(date, span) })),
    decided: decidedInWords(steps, deciding),
  };
}

/** The fewest rungs that make half of the range; none where there is only one to choose from. */
function decidingSteps(steps: readonly ForecastStep[]): ForecastStep[] {
  if (steps.length < 2) return [];
  const all = steps.reduce((sum, step) => sum + step.addsDays, 0);
  const deciding: ForecastStep[] = [];
  let sum = 0;
  for (const step of [...steps].sort((a, b) => b.addsDays - a.addsDays)) {
    if (sum >= DECIDING_SHARE * all) break;
    deciding.push(step);
    sum += step.addsDays;
  }
  return deciding.length < steps.length ? steps.filter((step) => deciding.includes(step)) : [];
}

function decidedInWords(steps: readonly ForecastStep[], deciding: readonly ForecastStep[]): string {
  if (deciding.length === 0) return '';
  const weeks = (some: readonly ForecastStep[]) =>
    Math.round(some.reduce((sum, step) => sum + step.addsDays, 0) / DAYS_A_WEEK);
  const names = deciding.map((step) => step.name);
  const said =
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
  return `${said} ${names.length < 2 ? 'decides' : 'decide'} most: ${weeks(deciding)} of the ${weeks(steps)} weeks between early and late.`;
}

/** First days of months, of quarters or of years, so that at most about six fit. */
function ticksOf(from: string, to: string): string[] {
  const months: string[] = [];
  let [year, month] = [Number(from.slice(0, 4)), Number(from.slice(5, 7))];
  for (;;) {
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
    const date = `${year}-${String(month).padStart(2, '0')}-01`;
    if (date > to) break;
    months.push(date);
  }
  const step = [1, 3, 6, 12].find((each) => months.length / each <= 6) ?? 24;
  return months
    .filter((date) => (Number(date.slice(5, 7)) - 1) % Math.min(step, 12) === 0)
    .filter((_, index) => step <= 12 || index % (step / 12) === 0);
}

function tickLabel(date: string, span: number): string {
  const month = monthName(date).slice(0, 3);
  return span > 200 || month === 'Jan' ? `${month} ${date.slice(0, 4)}` : month;
}

function monthAndYear(date: string): string {
  return `${monthName(date)} ${date.slice(0, 4)}`;
}
