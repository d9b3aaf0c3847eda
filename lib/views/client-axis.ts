import type { ClientView, DayState } from '#lib/checks/types.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { exactDate, shortDate } from './say-date.ts';

/** Days on the client page: twelve blocks of seven, counted back from the last one. */
export const PAGE_DAYS = 84;
export const BLOCK_DAYS = 7;
const WEEKS_AHEAD = 5;
const LABEL_DAYS = 6;

export type AxisTick = { at: number; label: string; exact: string };
export type RibbonDay = { state: 'trained' | 'rest' | 'off' | 'unknown'; said: string };
export type ClientAxis = {
  from: string;
  to: string;
  /** Left edges of the blocks, in days from the first (0-84); beyond 84 lies the future. */
  ticks: AxisTick[];
  ahead: AxisTick[];
  ribbon: RibbonDay[];
  /** First days of plan versions inside the axis. */
  plans: AxisTick[];
  summary: string;
};

/** The one time axis of all panels: 84 days up to and with `asOf.date`. */
export function clientAxis(view: ClientView): ClientAxis {
  const to = view.asOf.date;
  const from = addDays(to, 1 - PAGE_DAYS);
  const ribbon = Array.from({ length: PAGE_DAYS }, (_, index) => ribbonDay(view, addDays(from, index)));
  const count = (state: RibbonDay['state']) => ribbon.filter((day) => day.state === state).length;
  return {
    from,
    to,
    ticks: ticksFrom(from, PAGE_DAYS / BLOCK_DAYS, 0),
    ahead: ticksFrom(addDays(to, 1), WEEKS_AHEAD, PAGE_DAYS),
    ribbon,
    plans: apartEnough(
      view.history.plans
        .filter((plan) => plan.from >= from && plan.from <= to)
        .map((plan) => ({
          at: daysBetween(from, plan.from),
          label: `plan ${plan.version}`,
          exact: `plan version ${plan.version} from ${exactDate(plan.from)}`,
        })),
    ),
    summary: `${shortDate(from)} to ${shortDate(to)}: trained on ${count('trained')} of ${PAGE_DAYS} days, rest on ${count('rest')}, away ${count('off')}, unknown ${count('unknown')}.`,
  };
}

/** Marks nearer to the last labelled one than a label is wide stand without: hover says which they are. */
function apartEnough(ticks: readonly AxisTick[]): AxisTick[] {
  let labelled = -LABEL_DAYS;
  return ticks.map((tick) => {
    if (tick.at - labelled < LABEL_DAYS) return { ...tick, label: '' };
    labelled = tick.at;
    return tick;
  });
}

/** Where a date stands on the axis, in days from its first; outside 0-83 it is not shown. */
export function dayOn(axis: { from: string }, date: string): number {
  return daysBetween(axis.from, date);
}

const SHOWN: Record<DayState, RibbonDay['state']> = {
  trained: 'trained',
  rest: 'rest',
  'taken-as-rest': 'rest',
  off: 'off',
  unknown: 'unknown',
};

function ribbonDay(view: ClientView, date: string): RibbonDay {
  const state = SHOWN[view.days[view.indexOf(date)]?.state ?? 'unknown'];
  return { state, said: `${exactDate(date)}: ${state}` };
}

function ticksFrom(first: string, count: number, at: number): AxisTick[] {
  return Array.from({ length: count }, (_, index) => {
    const date = addDays(first, BLOCK_DAYS * index);
    const monthStarts = index === 0 || Number(date.slice(8, 10)) <= BLOCK_DAYS;
    return {
      at: at + BLOCK_DAYS * index,
      label: monthStarts ? shortDate(date) : String(Number(date.slice(8, 10))),
      exact: exactDate(date),
    };
  });
}
