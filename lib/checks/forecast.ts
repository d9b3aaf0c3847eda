import type { Working } from '#lib/domain/finding.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { forecastSentence } from './forecast-words.ts';
import { roundTo } from './in-numbers.ts';
import { daysWithoutPause, passedRungs, type TimedRung } from './passed-rungs.ts';
import type { Standing } from './standings.ts';
import { type LimitId, type Limits, usedThresholds } from './thresholds.ts';
import { type RungTime, type TimeLeft, timeToGoal } from './time-to-goal.ts';
import type { ClientView } from './types.ts';
import { dateInWords, plainNumber } from './words.ts';

/** The range of dates of a goal; `early` and `late`: 10 and 90 of 100 draws are done by then. */
export type Forecast = {
  goalId: string;
  early: string;
  middle: string;
  late: string;
  /** Rungs passed here that the range rests on; with too few it rests on the usual times alone. */
  passed: number;
  usualOnly: boolean;
  /** The rungs left, the one stood on first: when each will be passed, and how many days it adds to the range. */
  steps: ForecastStep[];
  sentence: string;
  working: Working;
};
export type ForecastStep = {
  rungId: string;
  name: string;
  early: string;
  middle: string;
  late: string;
  addsDays: number;
};

const DAYS_A_WEEK = 7;
const USED: readonly LimitId[] = [
  'forecast.spreadBetween',
  'forecast.spreadWithin',
  'forecast.spreadWorth',
  'forecast.passedAtLeast',
  'forecast.leastDays',
  'forecast.draws',
];

/**
 * When the last rung of a ladder will be passed, as a range of local dates, for one standing of a client. Answers from
 * the usual weeks of the rungs left, the time already spent on the present one and the rungs passed here (see
 * `timeToGoal`); under `forecast.passedAtLeast` passed rungs from the usual weeks alone. `rungs` are all rungs of the
 * ladder. Undefined when no usual time is known for the present rung, and in a pause without an end. Method:
 * simulation with seeded draws; spreads and usual weeks: common practice, no source.
 */
export function forecast(
  view: ClientView,
  standing: Standing,
  rungs: readonly (TimedRung & { name: string })[],
  limits: Limits,
): Forecast | undefined {
  const { rung, side } = standing;
  const left = rungs
    .filter((one) => one.position > rung.position && one.usualWeeks > 0)
    .sort((a, b) => a.position - b.position);
  const start = startOf(view);
  if (rung.usualWeeks <= 0 || start === undefined) return undefined;
  const all = passedRungs(view, { ladderId: rung.ladderId, side }, rungs, limits);
  const usualOnly = all.length < limits['forecast.passedAtLeast'];
  const passed = usualOnly ? [] : all;
  const now = {
    days: daysWithoutPause(view.history.absences, standing.from, view.asOf.date),
    usualDays: rung.usualWeeks * DAYS_A_WEEK,
  };
  const ahead = left.map((one) => one.usualWeeks * DAYS_A_WEEK);
  const seed = `${view.history.client.id} ${standing.key}`;
  const days = timeToGoal({ seed, passed, now, ahead }, limits);
  const on = (count: number) => addDays(start, Math.ceil(count));
  const goal = left.at(-1) ?? rung;
  const datesOf = ({ early, middle, late }: TimeLeft) => ({
    early: on(early),
    middle: on(middle),
    late: on(late),
  });
  const dates = datesOf(days);
  const names = [rung.name, ...left.map((one) => one.name)];
  const ids = [rung.id, ...left.map((one) => one.id)];
  const steps = days.steps.map((step, index) => ({
    rungId: ids[index] ?? '',
    name: names[index] ?? '',
    ...datesOf(step),
    addsDays: Math.round(widthOf(step) - widthOf(days.steps[index - 1])),
  }));
  return {
    goalId: goal.id,
    ...dates,
    passed: all.length,
    usualOnly,
    steps,
    sentence: forecastSentence({ ...dates, goal: goal.name, passed: all.length, usualOnly }),
    working: workingOf({ dates, now, ahead, passed, count: all.length }, limits),
  };
}

function widthOf(range: TimeLeft | undefined): number {
  return range ? range.late - range.early : 0;
}

/** The day from which time runs: today, or the day after a pause that has an end. */
function startOf({ history, asOf }: ClientView): string | undefined {
  const pauses = history.absences.filter(
    ({ kind, from, to }) => kind === 'pause' && from <= asOf.date && (to === null || to >= asOf.date),
  );
  if (pauses.some(({ to }) => to === null)) return undefined;
  return pauses.reduce((latest, { to }) => (to !== null && to > latest ? to : latest), asOf.date);
}

function workingOf(
  about: {
    dates: { early: string; middle: string; late: string };
    now: RungTime;
    ahead: readonly number[];
    passed: readonly RungTime[];
    count: number;
  },
  limits: Limits,
): Working {
  const { dates, now, ahead, passed } = about;
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const pace = passed.map(({ days, usualDays }) => plainNumber(days / usualDays, 2)).join(', ');
  return {
    inputs: [
      { name: 'on this rung for', value: now.days, unit: `days, usually ${plainNumber(now.usualDays)}` },
      { name: 'rungs after it', value: ahead.length, unit: '' },
      { name: 'usual time of those', value: roundTo(sum(ahead) / DAYS_A_WEEK, 1), unit: 'weeks' },
      { name: 'rungs passed here', value: about.count, unit: '' },
      ...(pace === '' ? [] : [{ name: 'each took', value: pace, unit: 'x its usual time' }]),
      { name: '1 of 10 draws done by', value: dateInWords(dates.early), unit: '' },
      { name: '5 of 10 draws done by', value: dateInWords(dates.middle), unit: '' },
      { name: '9 of 10 draws done by', value: dateInWords(dates.late), unit: '' },
    ],
    formula:
      'time on each rung left is drawn from a log-normal around its usual time; the pace of the client, one draw for all rungs, is that of all clients drawn toward the rungs passed here (normal-inverse-chi-square); the present rung takes longer than it has taken',
    thresholds: usedThresholds(USED, limits),
    daysKnown: null,
    doubt:
      'Usual times are common practice, no source. The range holds 8 of 10 simulated clients, whose truth is known, and 2 of 3 where every rung takes longer than the one before; it assumes that training goes on as it has.',
  };
}
