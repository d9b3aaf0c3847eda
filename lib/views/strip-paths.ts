import type { PainPoint, StripView } from './strip.ts';

export const STRIP_WIDTH = 228;
export const STRIP_HEIGHT = 52;
const DAY = STRIP_WIDTH / 84;
const BLOCK = STRIP_WIDTH / 12;
const LOAD = { base: 51, height: 18 };
/** Pain 0 and pain 10: always the full scale. */
const PAIN = { zero: 30, ten: 10 };
const STEP = { low: 9, high: 4, riser: 4 };
const PAIN_SHOWN = 3;

export type StripPaths = {
  bodies: string;
  caps: string;
  over: string;
  ceiling: string | undefined;
  unknown: string;
  quiet: string;
  loud: string;
  points: { x: number; y: number }[];
  peak: { x: number; y: number; text: string } | undefined;
  steps: string;
  earned: string | undefined;
};

/** The strip as SVG path data, 228 x 52. Geometry only; colours and widths are the drawing's business. */
export function stripPaths(strip: StripView): StripPaths {
  const top = Math.max(1, strip.ceiling ?? 0, ...strip.weeks.map((week) => week.load ?? 0));
  const y = (load: number) => r(LOAD.base - (load / top) * LOAD.height);
  const bars = strip.weeks.map((week, index) => ({
    ...week,
    x: r(index * BLOCK + 1),
    end: r((index + 1) * BLOCK - 1),
  }));
  const known = bars.filter((bar) => bar.load !== undefined);
  const box = (bar: { x: number; end: number }, from: number, to: number) =>
    `M${bar.x} ${from}V${to}H${bar.end}V${from}Z`;
  return {
    bodies: known.map((bar) => box(bar, LOAD.base, y((bar.load ?? 0) - bar.over))).join(''),
    caps: known.map((bar) => `M${bar.x} ${y((bar.load ?? 0) - bar.over)}H${bar.end}`).join(''),
    over: known
      .filter((bar) => bar.over > 0)
      .map((bar) => box(bar, y(strip.ceiling ?? 0), y(bar.load ?? 0)))
      .join(''),
    ceiling: strip.ceiling === undefined ? undefined : `M0 ${y(strip.ceiling)}H${STRIP_WIDTH}`,
    unknown: bars
      .filter((bar) => bar.load === undefined)
      .map((bar) => `M${bar.x} ${LOAD.base}H${bar.end}`)
      .join(''),
    ...painPaths(strip),
    ...stepPaths(strip),
  };
}

function painPaths(strip: StripView): Pick<StripPaths, 'quiet' | 'loud' | 'points' | 'peak'> {
  const at = (point: { day: number; value: number }) => ({
    x: r((point.day + 0.5) * DAY),
    y: r(PAIN.zero - (point.value / 10) * (PAIN.zero - PAIN.ten)),
  });
  const loudPair = (a: PainPoint, b: PainPoint) => a.value >= PAIN_SHOWN || b.value >= PAIN_SHOWN;
  let [quiet, loud] = ['', ''];
  strip.pain.forEach((point, index) => {
    const before = strip.pain[index - 1];
    const to = at(point);
    if (before && point.joined) {
      const from = at(before);
      const piece = `M${from.x} ${from.y}L${to.x} ${to.y}`;
      if (loudPair(before, point)) loud += piece;
      else quiet += quiet.endsWith(`${from.x} ${from.y}`) ? `L${to.x} ${to.y}` : piece;
    } else if (point.value < PAIN_SHOWN && !strip.pain[index + 1]?.joined) {
      quiet += `M${r(to.x - 1)} ${to.y}H${r(to.x + 1)}`;
    }
  });
  const peak = strip.peak && at(strip.peak);
  return {
    quiet,
    loud,
    points: strip.pain.filter((point) => point.value >= PAIN_SHOWN).map(at),
    peak: peak && { x: Math.min(peak.x, STRIP_WIDTH - 5), y: peak.y - 4, text: String(strip.peak?.value) },
  };
}

function stepPaths(strip: StripView): Pick<StripPaths, 'steps' | 'earned'> {
  const positions = strip.steps.map((step) => step.position);
  const [low, high] = [Math.min(...positions), Math.max(...positions)];
  const y = (position: number) =>
    high === low
      ? r((STEP.low + STEP.high) / 2)
      : r(STEP.low - ((position - low) / (high - low)) * (STEP.low - STEP.high));
  const path = strip.steps.map((step, index) =>
    index === 0 ? `M${r(step.day * DAY)} ${y(step.position)}` : `H${r(step.day * DAY)}V${y(step.position)}`,
  );
  const last = strip.steps.at(-1);
  const end = last && y(last.position);
  return {
    steps: last ? `${path.join('')}H${STRIP_WIDTH}` : '',
    earned:
      strip.earned && end !== undefined
        ? `M${STRIP_WIDTH - 14} ${end}V${r(Math.max(1, end - STEP.riser))}H${STRIP_WIDTH}`
        : undefined,
  };
}

function r(value: number): number {
  return Math.round(value * 10) / 10;
}
