import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { exactDate, shortDate } from './say-date.ts';
import { usualOf } from './strip-usual.ts';

export const STRIP_DAYS = 84;
const WEEK = 7;
/** Pain from which a strip shows colour (0-10); below it is drawn thin. */
const PAIN_SHOWN = 3;

export type StripDay = { date: string; state: string; load: number | null; pain: number | null };
/** What the database knows of a client's last 84 days, and the client's steps on one ladder. */
export type StripDays = {
  days: StripDay[];
  absences: { from: string; to: string | null }[];
  /** Of all ladders; the strip picks one. */
  placements: { ladderId: string; side: string; from: string; position: number }[];
};

export type StripWeek = {
  from: string;
  /** Session load, arbitrary units; undefined: no day of the block is known. */
  load: number | undefined;
  /** The part above the usual week + 2 spreads; 0 when below or not known. */
  over: number;
  knownDays: number;
};
export type PainPoint = { day: number; value: number; joined: boolean };
export type StripView = {
  from: string;
  to: string;
  weeks: StripWeek[];
  /** Usual week + 2 spreads, arbitrary units; undefined under four ordinary weeks. */
  ceiling: number | undefined;
  pain: PainPoint[];
  peak: { day: number; value: number } | undefined;
  /** From this day (0-83, may start at 0) on this position of the ladder. */
  steps: { day: number; position: number }[];
  earned: boolean;
  spoken: string;
};

/**
 * A client's last 12 weeks for the board: 12 blocks of 7 days counted back from `lastNight` (inclusive).
 * Load in arbitrary units, pain 0-10. Unknown days stay unknown: no load, no pain, lines break there.
 */
export function toStrip(
  input: StripDays,
  options: { lastNight: string; ladderId?: string | undefined; earned: boolean },
): StripView {
  const from = addDays(options.lastNight, 1 - STRIP_DAYS);
  const days = fillDays(input, from);
  const usual = usualOf(days.map((day) => (day.known && !day.off ? (day.load ?? 0) : undefined)));
  const ceiling = usual && usual.median + 2 * usual.spread;
  const weeks = Array.from({ length: STRIP_DAYS / WEEK }, (_, index) =>
    toWeek(days.slice(index * WEEK, (index + 1) * WEEK), ceiling),
  );
  const pain = toPain(days);
  const peak = pain.reduce<PainPoint | undefined>(
    (best, point) => (point.value >= PAIN_SHOWN && point.value >= (best?.value ?? 0) ? point : best),
    undefined,
  );
  const view = {
    from,
    to: options.lastNight,
    weeks,
    ceiling,
    pain,
    peak: peak && { day: peak.day, value: peak.value },
    steps: toSteps(input.placements, from, options.ladderId),
    earned: options.earned,
  };
  return { ...view, spoken: speak(view, usual?.median) };
}

type Filled = { date: string; known: boolean; off: boolean; load: number | null; pain: number | null };

function fillDays(input: StripDays, from: string): Filled[] {
  const given = new Map(input.days.map((day) => [day.date, day]));
  const dates = input.days.map((day) => day.date).sort();
  let next = 0;
  return datesFrom(from).map((date) => {
    while (next < dates.length && (dates[next] ?? '') <= date) next += 1;
    const day = given.get(date);
    const away = input.absences.some((one) => one.from <= date && (one.to === null || one.to >= date));
    const known = (day !== undefined && day.state !== 'unknown') || away || liesBetween(dates, next);
    const off = !day && away;
    return { date, known, off, load: day?.load ?? null, pain: day?.pain ?? null };
  });
}

/** The 84 dates of every strip of a morning are the same ones. */
let lastDates: string[] = [];
function datesFrom(from: string): string[] {
  if (lastDates[0] !== from)
    lastDates = Array.from({ length: STRIP_DAYS }, (_, index) => addDays(from, index));
  return lastDates;
}

/** Taken as rest: between two check-ins at most four days apart. `after`: index of the first one that is later. */
function liesBetween(dates: string[], after: number): boolean {
  const [before, next] = [dates[after - 1], dates[after]];
  return before !== undefined && next !== undefined && daysBetween(before, next) <= 4;
}

function toWeek(days: Filled[], ceiling: number | undefined): StripWeek {
  const known = days.filter((day) => day.known);
  const load = known.length === 0 ? undefined : known.reduce((sum, day) => sum + (day.load ?? 0), 0);
  const over = load === undefined || ceiling === undefined ? 0 : Math.max(0, load - ceiling);
  return { from: days[0]?.date ?? '', load, over, knownDays: known.length };
}

function toPain(days: Filled[]): PainPoint[] {
  const points: PainPoint[] = [];
  let joined = false;
  days.forEach((day, index) => {
    if (!day.known || day.off) joined = false;
    if (day.pain === null) return;
    points.push({ day: index, value: day.pain, joined });
    joined = true;
  });
  return points;
}

function toSteps(placements: StripDays['placements'], from: string, ladderId?: string): StripView['steps'] {
  const newest = placements.reduce<(typeof placements)[number] | undefined>(
    (best, one) => (!best || one.from > best.from ? one : best),
    undefined,
  );
  const wanted = placements.some((one) => one.ladderId === ladderId) ? ladderId : newest?.ladderId;
  const ofLadder = placements.filter((one) => one.ladderId === wanted);
  const side = ofLadder.some((one) => one.side === 'both') ? 'both' : ofLadder[0]?.side;
  const steps = ofLadder
    .filter((one) => one.side === side)
    .sort((a, b) => a.from.localeCompare(b.from))
    .map((one) => ({ day: daysBetween(from, one.from), position: one.position }));
  const before = steps.filter((one) => one.day <= 0).at(-1);
  const inside = steps.filter((one) => one.day > 0 && one.day < STRIP_DAYS);
  return before ? [{ ...before, day: 0 }, ...inside] : inside;
}

function speak(view: Omit<StripView, 'spoken'>, usual: number | undefined): string {
  const last = view.weeks.at(-1)?.load;
  const unknown = view.weeks.filter((week) => week.load === undefined).length;
  const latest = view.pain.at(-1);
  const changes = view.steps.filter((step) => step.day > 0);
  const lastChange = changes.at(-1);
  return [
    `12 weeks to ${exactDate(view.to)}`,
    last === undefined ? 'load of the last 7 days unknown' : `load of the last 7 days ${round(last)} AU`,
    usual === undefined ? 'usual week not known yet' : `usual week ${round(usual)} AU`,
    view.peak
      ? `pain up to ${view.peak.value} of 10 on ${shortDate(addDays(view.from, view.peak.day))}`
      : latest && `pain never ${PAIN_SHOWN} or more`,
    latest && `last pain ${latest.value} of 10`,
    lastChange &&
      `rung changed ${times(changes.length)}, last on ${shortDate(addDays(view.from, lastChange.day))}`,
    view.earned && 'next rung earned, not taken',
    unknown > 0 && `${unknown} of 12 weeks unknown`,
  ]
    .filter((words) => typeof words === 'string')
    .join('; ')
    .concat('.');
}

function round(value: number): string {
  return Math.round(value).toLocaleString('en-GB');
}

function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}
