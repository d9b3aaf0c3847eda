import type { ClientView, Day } from '#lib/checks/types.ts';
import { asSentence, placeInWords } from '#lib/domain/labels.ts';
import type { PainRegion, PainSide } from '#lib/domain/vocabulary.ts';
import { median } from '#lib/stats/median.ts';
import { type ClientAxis, dayOn, PAGE_DAYS } from './client-axis.ts';
import { saidDate } from './say-date.ts';
import { apart } from './spread-labels.ts';

export type PainLine = {
  key: string;
  place: string;
  /** By day of the axis; null breaks the line. Days that were rest without a word are left out, not zero. */
  points: { at: number; worst: number | null; morning: number | null }[];
  peak: { at: number; value: number; said: string } | null;
  now: string;
  usual: string;
  /** px from the top of the panel, which is 10 scores high. */
  labelAt: number;
};
export type PainView = {
  lines: PainLine[];
  others: string[];
  summary: string;
  table: { date: string; place: string; worst: number; morning: string }[];
};

const SHOWN = 3;
const RECENT_DAYS = 28;
const LABEL_GAP = 34;
export const PAIN_HEIGHT = 118;
/** Scores at and above it are drawn as points in colour (design rule). */
const SPOKEN_FROM = 3;

/**
 * Joint or tendon pain by region and side, worst of the day 0-10, the morning beside it. A day whose check-in does
 * not name the region is 0 there; a day without a check-in is unknown and breaks the line unless it counts as rest.
 */
export function painView(view: ClientView, axis: ClientAxis): PainView {
  const days = view.days.slice(-PAGE_DAYS);
  const lines = placesOf(days)
    .map((place) => toLine(days, axis, place))
    .sort((a, b) => rank(b) - rank(a) || (a.key < b.key ? -1 : 1));
  const shown = lines.slice(0, SHOWN);
  const spots = apart(
    shown.map((line) => (1 - (lastValue(line) ?? 0) / 10) * PAIN_HEIGHT - 8),
    LABEL_GAP,
  );
  return {
    lines: shown.map((line, index) => ({ ...line, labelAt: spots[index] ?? 0 })),
    others: lines.slice(SHOWN).map((line) => `${line.place}: ${line.now}`),
    summary:
      lines.length === 0
        ? `No joint or tendon pain was told in these ${PAGE_DAYS} days.`
        : `${lines.map((line) => `${asSentence(line.place)}: ${line.now}${line.peak ? `, highest ${line.peak.said}` : ''}`).join('. ')}.`,
    table: tableOf(days),
  };
}

type Place = { region: PainRegion; side: PainSide };

function placesOf(days: readonly Day[]): Place[] {
  const places = new Map<string, Place>();
  for (const { region, side, value, kind } of days
    .flatMap((day) => day.checkIns)
    .flatMap((one) => one.pain)) {
    if (kind === 'joint' && value > 0) places.set(`${region} ${side}`, { region, side });
  }
  return [...places.values()];
}

function toLine(days: readonly Day[], axis: ClientAxis, place: Place): PainLine {
  const points = days.flatMap((day): PainLine['points'] => {
    const at = dayOn(axis, day.date) + 0.5;
    if (day.checkIns.length > 0) return [{ at, ...scoresOf(day, place) }];
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
    key: `${place.region}:${place.side}`,
    place: placeInWords(place.region, place.side),
    points,
    peak: peak && { ...peak, said: `${peak.value} on ${saidOn(days, axis, peak.at)}` },
    now: last
      ? `${last.worst ?? 0}${last.morning === null ? '' : `, morning ${last.morning}`}, ${saidOn(days, axis, last.at)}`
      : 'unknown',
    usual:
      middle === undefined ? `nothing known in ${RECENT_DAYS} days` : `${RECENT_DAYS}-day median ${middle}`,
    labelAt: 0,
  };
}

/** Worst of during, after and today; the morning apart. A check-in that does not name the place says 0. */
function scoresOf(day: Day, place: Place): { worst: number; morning: number | null } {
  const here = day.checkIns
    .flatMap((checkIn) => checkIn.pain)
    .filter((score) => score.kind === 'joint' && score.region === place.region && score.side === place.side);
  const mornings = here.filter((score) => score.moment === 'morning').map((score) => score.value);
  return {
    worst: Math.max(0, ...here.filter((score) => score.moment !== 'morning').map((score) => score.value)),
    morning: mornings.length === 0 ? null : Math.max(...mornings),
  };
}

function saidOn(days: readonly Day[], axis: ClientAxis, at: number): string {
  const date = days.find((day) => dayOn(axis, day.date) + 0.5 === at)?.date;
  return date === undefined ? '' : saidDate(date, axis.to);
}

function lastValue(line: PainLine): number | undefined {
  return line.points.filter((point) => point.worst !== null).at(-1)?.worst ?? undefined;
}

/** Recent and high first: the last score, then the peak. */
function rank(line: PainLine): number {
  return (lastValue(line) ?? 0) * 100 + (line.peak?.value ?? 0);
}

function tableOf(days: readonly Day[]): PainView['table'] {
  const rows = days.flatMap((day) =>
    placesOf([day]).map((place) => {
      const { worst, morning } = scoresOf(day, place);
      return {
        date: day.date,
        place: placeInWords(place.region, place.side),
        worst,
        morning: morning === null ? 'not given' : String(morning),
      };
    }),
  );
  return rows.reverse();
}
