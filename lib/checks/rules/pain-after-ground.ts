import type { Outcome } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { PAIN_DOUBT, painLimit, painSubject } from '../pain-place.ts';
import { type PainPoint, type PainSeries, painSeries, usualPain } from '../pain-series.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { loadedFacts, whatLoaded } from '../what-loaded.ts';
import { counted, dayInWords, plainNumber } from '../words.ts';

const KIND = 'pain-after-ground';

export const painAfterGround: Check = {
  kind: KIND,
  title: 'Wrist after soft ground',
  question: 'Did a wrist get sorer in the week after training on soft ground?',
  evaluate: (view, limits) =>
    painSeries(view)
      .filter((series) => series.region.startsWith('wrist'))
      .map((series) => judge(view, series, limits)),
};

function judge(view: ClientView, series: PainSeries, limits: Limits): Outcome {
  const subject = painSubject(series.region, series.side);
  const window = limits['painAfterGround.days'];
  // The last two check-ins that speak of the wrist: one calm one does not hide the sore one before it.
  const recent = series.points.slice(-limits['painRising.recentCheckIns']).reverse();
  const sore = recent.find((point) => isSoreAfterGround(view, series, point, limits));
  const last = series.points.at(-1);
  if (!last || daysBetween(last.date, view.asOf.date) > 2 * window) {
    return {
      status: 'not-enough-history',
      kind: KIND,
      subject,
      missing: `no check-in in ${2 * window} days says how ${subject.label} is`,
    };
  }
  const ground = sore && softDayBefore(view, sore.date, window);
  if (!sore || ground === undefined) return { status: 'clear', kind: KIND, subject };
  const usual = usualPain(series, 'worst', sore.date, limits);
  const least = painLimit(view, 'painAfterGround.atLeast', limits);
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${asSentence(subject.label)}: **${sore.highest} of 10** on ${dayInWords(sore.date)}, usual ${plainNumber(usual)}, ${counted(daysBetween(ground, sore.date), 'day')} after soft ground on ${dayInWords(ground)}.`,
      short: `${subject.label} ${sore.highest} of 10 after soft ground`,
      since: sore.date,
      step: {
        kind: 'hold',
        text: 'Train on something hard; no soft ground until the wrist is back at its usual',
      },
      clears: `two check-ins under ${plainNumber(Math.max(least, usual + limits['painAfterGround.above']))} of 10, or none within ${window} days after soft ground`,
      evidence: { value: sore.highest, date: sore.date, usual, ground, days: daysBetween(ground, sore.date) },
      inputs: [
        { name: `on ${dayInWords(sore.date)}`, value: sore.highest, unit: 'of 10' },
        { name: 'usual', value: usual, unit: 'of 10' },
        { name: 'soft ground on', value: ground, unit: '' },
        ...loadedFacts(whatLoaded(view, series, sore.date, limits)),
      ],
      formula: 'wrist 2 or more above usual and at least 3, within 7 days after a day on soft ground',
      thresholds: ['painAfterGround.days', 'painAfterGround.above', 'painAfterGround.atLeast'],
      doubt: PAIN_DOUBT,
    },
    limits,
  );
}

function isSoreAfterGround(view: ClientView, series: PainSeries, point: PainPoint, limits: Limits): boolean {
  const usual = usualPain(series, 'worst', point.date, limits);
  return (
    reaches(point.highest, usual + limits['painAfterGround.above']) &&
    point.highest >= painLimit(view, 'painAfterGround.atLeast', limits) &&
    softDayBefore(view, point.date, limits['painAfterGround.days']) !== undefined
  );
}

/** The last day on soft ground within the days before a date, that date included. */
function softDayBefore(view: ClientView, date: string, days: number): string | undefined {
  const at = view.indexOf(date);
  return view.days
    .slice(Math.max(0, at - days), at + 1)
    .filter((day) => day.soft)
    .at(-1)?.date;
}
