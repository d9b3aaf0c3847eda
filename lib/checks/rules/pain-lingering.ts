import type { Outcome } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import { findingOf } from '../finding-of.ts';
import { PAIN_DOUBT, painLimit, painSubject } from '../pain-place.ts';
import { type PainSeries, painSeries } from '../pain-series.ts';
import { soreMuscles } from '../sore-muscles.ts';
import type { Limits } from '../thresholds.ts';
import { tissuesOfRegion } from '../tissues.ts';
import type { Check, ClientView } from '../types.ts';
import { loadedFacts, loadedInWords, whatLoaded } from '../what-loaded.ts';
import { counted } from '../words.ts';

const KIND = 'pain-lingering';

export const painLingering: Check = {
  kind: KIND,
  title: 'Pain that stays',
  question: 'Has one place been sore on most check-ins for three weeks?',
  evaluate: (view, limits) => [
    ...painSeries(view).map((series) => judge(view, series, limits)),
    ...soreMuscles(view, KIND, limits),
  ],
};

function judge(view: ClientView, series: PainSeries, limits: Limits): Outcome {
  const subject = painSubject(series.region, series.side);
  if (isLimited(view, series)) return { status: 'clear', kind: KIND, subject, lowerBound: true };
  const last = series.points.at(-1);
  const before = soreBeforeStart(view, series, limits);
  const window = limits['painLingering.days'];
  if (!last || daysBetween(last.date, view.asOf.date) > window) {
    if (before && !last) return found(view, series, { checkIns: 0, sore: 0, before }, limits);
    const missing = `no check-in in ${window} days says how ${subject.label} is`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  // Counted back from the last check-in that speaks of the place: silence lowers nothing.
  const from = addDays(last.date, 1 - window);
  const values = series.points
    .filter((point) => point.date >= from)
    .map((point) => point.worst ?? point.highest);
  const sore = values.filter((value) => value >= painLimit(view, 'painLingering.from', limits)).length;
  const enough = values.length >= limits['painLingering.checkIns'];
  const most = sore > values.length * limits['painLingering.share'];
  if ((enough && most) || (!enough && before)) {
    return found(view, series, { checkIns: values.length, sore, before: before && !enough }, limits);
  }
  if (enough) return { status: 'clear', kind: KIND, subject };
  const missing = `${values.length} of ${counted(limits['painLingering.checkIns'], 'check-in')} known in ${window} days`;
  return { status: 'not-enough-history', kind: KIND, subject, missing };
}

/** Told at intake as sore for weeks, and strong enough to count. */
function soreBeforeStart(view: ClientView, series: PainSeries, limits: Limits): boolean {
  return view.history.client.intakePain.some(
    (told) =>
      told.region === series.region &&
      told.side === series.side &&
      told.value >= painLimit(view, 'painLingering.from', limits) &&
      told.sinceWeeks >= limits['painLingering.intakeWeeks'],
  );
}

/** Somebody has ruled on this place already: silent until that ends. */
function isLimited(view: ClientView, { region, side }: PainSeries): boolean {
  const { date } = view.asOf;
  return view.history.limits.some(
    (limit) =>
      limit.from <= date &&
      (limit.until === null || limit.until >= date) &&
      (limit.side === null || limit.side === side) &&
      (limit.region === region || (limit.tissue !== null && tissuesOfRegion(region).includes(limit.tissue))),
  );
}

function found(
  view: ClientView,
  series: PainSeries,
  { checkIns, sore, before }: { checkIns: number; sore: number; before: boolean },
  limits: Limits,
): Outcome {
  const subject = painSubject(series.region, series.side);
  const from = painLimit(view, 'painLingering.from', limits);
  const date = series.points.at(-1)?.date ?? view.asOf.date;
  const loaded = whatLoaded(view, series, date, limits);
  const counts = `${from} or more on **${sore} of ${checkIns}** check-ins in ${limits['painLingering.days']} days`;
  const told = `sore since before the start, **${series.intake} of 10** at intake`;
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${asSentence(subject.label)}: ${before ? told : counts}.${loadedInWords(loaded)}`,
      short: before
        ? `${subject.label} sore since before the start`
        : `${subject.label} sore, ${sore} of ${checkIns} check-ins`,
      since: before ? (view.days[0]?.date ?? date) : addDays(date, 1 - limits['painLingering.days']),
      step: { kind: 'cut-volume', text: `Swap the drills that load ${subject.label} most for two weeks` },
      clears: `half or fewer of the check-ins of ${limits['painLingering.days']} days at ${from} or more, or a limit set for it`,
      evidence: { checkIns, sore, from, sinceBeforeStart: before, intake: series.intake },
      inputs: [
        { name: `check-ins of ${from} or more`, value: sore, unit: 'check-ins' },
        { name: 'check-ins that say', value: checkIns, unit: 'check-ins' },
        { name: 'at intake', value: series.intake, unit: 'of 10' },
        ...loadedFacts(loaded),
      ],
      formula:
        'at least five check-ins in 21 days, the worst of more than half of them at the threshold or over it',
      thresholds: [
        'painLingering.checkIns',
        'painLingering.days',
        'painLingering.from',
        'painLingering.share',
        'painLingering.intakeWeeks',
      ],
      doubt: PAIN_DOUBT,
    },
    limits,
  );
}
