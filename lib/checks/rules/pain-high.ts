import type { Outcome } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { findingOf } from '../finding-of.ts';
import { hasClinicianWord, PAIN_DOUBT, painLimit, painSubject } from '../pain-place.ts';
import { type PainPoint, type PainSeries, painSeries } from '../pain-series.ts';
import { EVERY_OTHER } from '../reasons.ts';
import type { Limits } from '../thresholds.ts';
import { tissuesOfRegion } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { loadedFacts, loadedInWords, whatLoaded } from '../what-loaded.ts';
import { counted, dayInWords } from '../words.ts';

const KIND = 'pain-high';

export const painHigh: Check = {
  kind: KIND,
  title: 'Pain of 6 or more',
  question: 'Did joint or tendon pain reach 6 of 10, and has it not come down since?',
  evaluate: (view, limits) => [
    ...painSeries(view).map((series) => judge(view, series, limits)),
    everyOther(view),
  ],
};

/** Places whose only high value was corrected away are named nowhere: this one outcome speaks for them. */
function everyOther(view: ClientView): Outcome {
  const coversFrom = view.days[0]?.date ?? view.asOf.date;
  return { status: 'clear', kind: KIND, subject: { key: EVERY_OTHER, label: '' }, coversFrom };
}

type Episode = { highs: PainPoint[]; high: PainPoint; highest: number; before: number; lows: number };

function judge(view: ClientView, series: PainSeries, limits: Limits): Outcome {
  const subject = painSubject(series.region, series.side);
  const { episode, over } = lastEpisode(view, series, limits);
  if (!episode) return { status: 'clear', kind: KIND, subject, ...(over !== undefined && { why: over }) };
  const { highs, high, highest, before, lows } = episode;
  // One that was not known stays now until it is closed, also when a known one comes after it.
  const tier = highs.every((each) => isCovered(view, series, each)) ? 'this-week' : 'now';
  const loaded = whatLoaded(view, series, high.date, limits);
  const needed = limits['painHigh.clearCheckIns'];
  const clearAt = painLimit(view, 'painHigh.clearAt', limits);
  const from = before < high.highest ? `, up from ${before}` : '';
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'act',
      tier,
      sentence: `${asSentence(subject.label)}: **${high.highest} of 10** on ${dayInWords(high.date)}${from}.${loadedInWords(loaded)}`,
      short: `${subject.label} ${high.highest} of 10`,
      since: highs[0]?.date ?? high.date,
      step: {
        kind: 'send-to-clinician',
        text: `Stop the work that brings it on; ${subject.label} to a licensed clinician before it goes on`,
      },
      clears: `${counted(needed, 'check-in')} running of ${clearAt} or less, or a clinician's word recorded`,
      evidence: {
        value: high.highest,
        date: high.date,
        highest,
        before,
        lowCheckIns: lows,
        known: tier === 'this-week',
        severity: highest,
      },
      inputs: [
        { name: `highest on ${dayInWords(high.date)}`, value: high.highest, unit: 'of 10' },
        { name: 'the check-in before', value: before, unit: 'of 10' },
        { name: `check-ins of ${clearAt} or less since`, value: lows, unit: 'check-ins' },
        ...loadedFacts(loaded),
      ],
      formula: 'the highest joint or tendon value of a check-in, any moment, at the threshold or over it',
      thresholds: ['painHigh.from', 'painHigh.clearAt', 'painHigh.clearCheckIns', 'grade.under18Stricter'],
      doubt: PAIN_DOUBT,
    },
    limits,
  );
}

/** The high pain that is not over yet, or in which words it was: low check-ins running, or a clinician's word. */
function lastEpisode(
  view: ClientView,
  series: PainSeries,
  limits: Limits,
): { episode?: Episode; over?: string } {
  const from = painLimit(view, 'painHigh.from', limits);
  const clearAt = painLimit(view, 'painHigh.clearAt', limits);
  const needed = limits['painHigh.clearCheckIns'];
  let episode: Episode | undefined;
  let over: string | undefined;
  let before = series.intake;
  for (const point of series.points) {
    if (point.highest >= from) {
      const highest = Math.max(point.highest, episode?.highest ?? 0);
      episode = { highs: [...(episode?.highs ?? []), point], high: point, highest, before, lows: 0 };
    } else if (episode) {
      episode = { ...episode, lows: point.highest <= clearAt ? episode.lows + 1 : 0 };
      if (episode.lows >= needed) {
        episode = undefined;
        over = `${counted(needed, 'check-in')} of ${clearAt} or less`;
      }
    }
    before = point.highest;
  }
  if (episode && hasClinicianWord(view, series, { from: episode.high.date, to: view.asOf.date })) {
    return { over: "a clinician's word" };
  }
  return episode ? { episode } : over === undefined ? {} : { over };
}

/** Known and the usual, or a clinician has spoken of it since. */
function isCovered(view: ClientView, series: PainSeries, high: PainPoint): boolean {
  const since = { from: high.date, to: view.asOf.date };
  return isKnownAndUsual(view, series, high) || hasClinicianWord(view, series, since);
}

/** Known and treated: a clinician's word before, a limit on the place with an end date, and "the usual" today. */
function isKnownAndUsual(view: ClientView, series: PainSeries, high: PainPoint): boolean {
  if (!high.usual || !hasClinicianWord(view, series, { to: high.date })) return false;
  return view.history.limits.some(
    (limit) =>
      limit.from <= high.date &&
      limit.until !== null &&
      limit.until >= view.asOf.date &&
      (limit.side === null || limit.side === series.side) &&
      (limit.region === series.region ||
        (limit.tissue !== null && tissuesOfRegion(series.region).includes(limit.tissue))),
  );
}
