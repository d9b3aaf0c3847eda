import { type PainSeries, painSeries } from '#lib/checks/pain-series.ts';
import type { ClientView, Day } from '#lib/checks/types.ts';
import { asSentence, placeInWords } from '#lib/domain/labels.ts';
import { median } from '#lib/stats/median.ts';
import { type ClientAxis, dayOn, PAGE_DAYS } from './client-axis.ts';
import { datedDay } from './say-date.ts';
import { apart } from './spread-labels.ts';

export type PainLine = {
  key: string;
  place: string;
  /** By day of the axis; null breaks the line. Days that were rest without a word are left out, not zero. */
  points: { at: number; worst: number | null; morning: number | null }[];
  peak: { at: number; value: number; said: string; isLate: boolean } | null;
  now: string;
  usual: string;
  /** px from the top of the panel, which is 10 scores high. */
  labelAt: number;
};
export type PainView = {
  lines: PainLine[];
  others: string[];
  summary: string;
  table: { date: string; place: string; worst: string; morning: string }[];
};

const SHOWN = 3;
const RECENT_DAYS = 28;
const LABEL_GAP = 34;
export const PAIN_HEIGHT = 118;
/** Scores at and above it are drawn as points in colour (design rule). */
const SPOKEN_FROM = 3;

/**
 * Joint or tendon pain by region and side, worst of the day 0-10, the morning beside it. A check-in that does not
 * speak of a place leaves it unknown; so does a day without one. Unknown breaks the line, rest between does not.
 */
export function painView(view: ClientView, axis: ClientAxis): PainView {
  const days = view.days.slice(-PAGE_DAYS);
  const places = painSeries(view).map((series) => dailyOf(series, axis));
  const lines = places
    .filter((place) =>
      [...place.byDay.values()].some((score) => (score.worst ?? 0) > 0 || (score.morning ?? 0) > 0),
    )
    .map((place) => toLine(days, axis, place))
    .sort((a, b) => rank(b) - rank(a) || (a.key < b.key ? -1 : 1));
  const shown = lines.slice(0, SHOWN);
  const spots = apart(
    shown.map((line) => (1 - (lastValue(line) ?? 0) / 10) * PAIN_HEIGHT - 8),
    LABEL_GAP,
    PAIN_HEIGHT - LABEL_GAP,
  );
  return {
    lines: shown.map((line, index) => ({ ...line, labelAt: spots[index] ?? 0 })),
    others: lines.slice(SHOWN).map((line) => `${line.place}: ${line.now}`),
    summary:
      lines.length === 0
        ? `No joint or tendon pain was told in these ${PAGE_DAYS} days.`
        : `${lines.map((line) => `${asSentence(line.place)}: ${line.now}${line.peak ? `, highest ${line.peak.said}` : ''}`).join('. ')}.`,
    table: tableOf(places),
  };
}

type Score = { date: string; worst: number | null; morning: number | null };
type Place = { key: string; words: string; byDay: ReadonlyMap<string, Score> };

/** The highest scores of each day on the axis. */
function dailyOf(series: PainSeries, axis: ClientAxis): Place {
  const byDay = new Map<string, Score>();
  for (const { date, worst, morning } of series.points) {
    if (date < axis.from || date > axis.to) continue;
    const known = byDay.get(date);
    byDay.set(date, { date, worst: higher(known?.worst, worst), morning: higher(known?.morning, morning) });
  }
  return { key: series.key, words: placeInWords(series.region, series.side), byDay };
}

function higher(a: number | null | undefined, b: number | undefined): number | null {
  if (b === undefined) return a ?? null;
  return a === undefined || a === null ? b : Math.max(a, b);
}

function toLine(days: readonly Day[], axis: ClientAxis, place: Place): PainLine {
  const points = days.flatMap((day): PainLine['points'] => {
    const at = dayOn(axis, day.date) + 0.5;
    const score = place.byDay.get(day.date);
    if (score) return [{ at, worst: score.worst, morning: score.morning }];
    return day.state === 'taken-as-rest' ? [] : [{ at, worst: null, morning: null }];
  });
  const known = points.filter((point) => point.worst !== null);
  const peak = known.reduce<{ at: number; value: number } | null>(
    (best, { at, worst }) =>
      (worst ?? 0) >= Math.max(SPOKEN_FROM, best?.value ?? 0) ? { at, value: worst ?? 0 } : best,
    null,
  );
  const last = known.at(-1);
  const recent = known.filter((point) => point.at > PAGE_DAYS - RECENT_DAYS).map((point) => point.worst ?? 0);
  const middle = median(recent);
  return {
    key: place.key,
    place: place.words,
    points,
    peak: peak && {
      ...peak,
      said: `${peak.value} on ${saidOn(days, axis, peak.at)}`,
      isLate: peak.at > PAGE_DAYS - 8,
    },
    now: last
      ? `${last.worst ?? 0}${last.morning ? `, morning ${last.morning}` : ''}, ${saidOn(days, axis, last.at)}`
      : 'unknown',
    usual:
      middle === undefined ? `nothing known in ${RECENT_DAYS} days` : `${RECENT_DAYS}-day median ${middle}`,
    labelAt: 0,
  };
}

function saidOn(days: readonly Day[], axis: ClientAxis, at: number): string {
  const date = days.find((day) => dayOn(axis, day.date) + 0.5 === at)?.date;
  return date === undefined ? '' : datedDay(date, axis.to);
}

function lastValue(line: PainLine): number | undefined {
  return line.points.filter((point) => point.worst !== null).at(-1)?.worst ?? undefined;
}

/** Recent and high first: the last score, then the peak. */
function rank(line: PainLine): number {
  return (lastValue(line) ?? 0) * 100 + (line.peak?.value ?? 0);
}

function tableOf(places: readonly Place[]): PainView['table'] {
  return places
    .flatMap((place) =>
      [...place.byDay.values()]
        .filter((score) => (score.worst ?? 0) > 0 || (score.morning ?? 0) > 0)
        .map(({ date, worst, morning }) => ({
          date,
          place: place.words,
          worst: worst === null ? 'not given' : String(worst),
          morning: morning === null ? 'not given' : String(morning),
        })),
    )
    .sort((a, b) => (a.date === b.date ? (a.place < b.place ? -1 : 1) : a.date < b.date ? 1 : -1));
}
