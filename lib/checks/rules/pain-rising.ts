import type { Outcome } from '#lib/domain/finding.ts';
import { asSentence } from '#lib/domain/labels.ts';
import { addDays, daysBetween } from '#lib/domain/local-date.ts';
import type { Level } from '#lib/domain/vocabulary.ts';
import { cusum } from '#lib/stats/cusum.ts';
import { reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { PAIN_DOUBT, painLimit, painSubject } from '../pain-place.ts';
import { type PainSeries, painSeries, usualPain } from '../pain-series.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { loadedFacts, loadedInWords, whatLoaded } from '../what-loaded.ts';
import { counted, dayInWords, plainNumber } from '../words.ts';

const KIND = 'pain-rising';

export const painRising: Check = {
  kind: KIND,
  title: 'Pain rising',
  question: 'Has pain in one place been above its usual often or far enough to add up?',
  evaluate: (view, limits) => painSeries(view).map((series) => judge(view, series, limits)),
};

function judge(view: ClientView, series: PainSeries, limits: Limits): Outcome {
  const subject = painSubject(series.region, series.side);
  const last = series.points.at(-1);
  const silent = last === undefined || daysBetween(last.date, view.asOf.date) > limits['painRising.days'];
  if (silent) {
    const missing = `no check-in in ${limits['painRising.days']} days says how ${subject.label} is`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const sums = addUp(series, last.date, limits);
  const few = series.points.length < limits['painRising.atLeast'];
  const level = few ? coldLevel(series, limits) : levelOf(view, sums, limits);
  if (level === undefined && few) {
    const missing = `${series.points.length} of ${counted(limits['painRising.atLeast'], 'check-in')} known`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  if (level === undefined) return { status: 'clear', kind: KIND, subject };
  return found(view, series, { ...sums, level, few }, limits);
}

type Sums = {
  usual: number;
  usualMorning: number;
  /** What is above usual + allowance, added up to the last check-in. */
  sum: number;
  morningSum: number;
  /** How far above usual the last two check-ins were at most. */
  above: number;
  from: string;
  checkIns: number;
  mornings: number;
};

/** Counted back from the last check-in that speaks of the place, so that silence lowers nothing. */
function addUp(series: PainSeries, until: string, limits: Limits): Sums {
  const from = addDays(until, 1 - limits['painRising.days']);
  const points = series.points.filter((point) => point.date >= from);
  const usual = usualPain(series, 'worst', until, limits);
  const usualMorning = usualPain(series, 'morning', until, limits);
  const worst = points.flatMap((point) => point.worst ?? []);
  const mornings = points.flatMap((point) => point.morning ?? []);
  const recent = points.slice(-limits['painRising.recentCheckIns']);
  const above = recent.map((point) =>
    Math.max((point.worst ?? 0) - usual, (point.morning ?? 0) - usualMorning),
  );
  return {
    usual,
    usualMorning,
    sum: cusum(worst, usual, limits['painRising.allowance']).at(-1) ?? 0,
    morningSum: cusum(mornings, usualMorning, limits['painRising.morningAllowance']).at(-1) ?? 0,
    above: Math.max(...above),
    from,
    checkIns: worst.length,
    mornings: mornings.length,
  };
}

function levelOf(view: ClientView, { sum, morningSum, above }: Sums, limits: Limits): Level | undefined {
  if (!reaches(above, limits['painRising.recentAbove'])) return undefined;
  if (reaches(sum, painLimit(view, 'painRising.act', limits))) return 'act';
  if (reaches(sum, painLimit(view, 'painRising.watch', limits))) return 'watch';
  return reaches(morningSum, painLimit(view, 'painRising.morningWatch', limits)) ? 'watch' : undefined;
}

/** Under four check-ins only the last one against the value told at intake. */
function coldLevel(series: PainSeries, limits: Limits): Level | undefined {
  const last = series.points.at(-1)?.highest ?? 0;
  return reaches(last, series.intake + limits['painRising.coldAbove']) ? 'watch' : undefined;
}

function found(
  view: ClientView,
  series: PainSeries,
  sums: Sums & { level: Level; few: boolean },
  limits: Limits,
): Outcome {
  const subject = painSubject(series.region, series.side);
  const last = series.points.at(-1);
  const [now, date] = [last?.highest ?? 0, last?.date ?? view.asOf.date];
  const loaded = whatLoaded(view, series, date, limits);
  const byMornings = !sums.few && sums.sum < painLimit(view, 'painRising.watch', limits);
  const added = byMornings ? sums.morningSum : sums.sum;
  const how = sums.few
    ? `${plainNumber(now - series.intake)} above the value at intake`
    : byMornings
      ? `mornings above usual + ${limits['painRising.morningAllowance']} have added up to **${plainNumber(added)}** in ${limits['painRising.days']} days`
      : `what is above usual + ${limits['painRising.allowance']} has added up to **${plainNumber(added)}** in ${limits['painRising.days']} days`;
  const value = sums.few ? `**${now} of 10**` : `${now} of 10`;
  return findingOf(
    {
      kind: KIND,
      subject,
      level: sums.level,
      sentence: `${asSentence(subject.label)}: ${value} on ${dayInWords(date)}, usual ${plainNumber(sums.usual)}; ${how}.${loadedInWords(loaded)}`,
      short: `${subject.label} rising, ${now} of 10`,
      since: sums.from,
      step: {
        kind: 'cut-volume',
        text: loaded.drills[0]
          ? `Cut ${loaded.drills[0].name} by half until two calm check-ins`
          : 'Ask what brings it on',
      },
      clears: `the last ${counted(limits['painRising.recentCheckIns'], 'check-in')} under ${plainNumber(sums.usual + limits['painRising.recentAbove'])} of 10, or the sum under ${painLimit(view, 'painRising.watch', limits)}`,
      evidence: {
        now,
        date,
        usual: sums.usual,
        usualMorning: sums.usualMorning,
        sum: sums.sum,
        morningSum: sums.morningSum,
        above: sums.above,
        checkIns: sums.checkIns,
        mornings: sums.mornings,
        intake: series.intake,
      },
      inputs: [
        { name: 'last check-in', value: now, unit: 'of 10' },
        { name: 'usual worst', value: sums.usual, unit: 'of 10' },
        { name: 'usual morning', value: sums.usualMorning, unit: 'of 10' },
        { name: 'added up, worst', value: sums.sum, unit: 'points' },
        { name: 'added up, mornings', value: sums.morningSum, unit: 'points' },
        { name: 'check-ins counted', value: sums.checkIns, unit: 'check-ins' },
        { name: 'mornings known', value: sums.mornings, unit: 'mornings' },
        ...loadedFacts(loaded),
      ],
      formula:
        'over the check-ins in order: sum = max(0, sum + worst - usual - 1), mornings with 0.5; raised while one of the last two is 2 or more above usual; usual = median of the check-ins 14-56 days ago',
      thresholds: [
        'painRising.days',
        'painRising.allowance',
        'painRising.watch',
        'painRising.act',
        'painRising.morningAllowance',
        'painRising.morningWatch',
        'painRising.recentAbove',
        'painRising.atLeast',
        'painRising.coldAbove',
      ],
      doubt: PAIN_DOUBT,
    },
    limits,
  );
}
