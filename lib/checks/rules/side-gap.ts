import type { Outcome } from '#lib/domain/finding.ts';
import { addDays } from '#lib/domain/local-date.ts';
import { coefficientOfVariation } from '#lib/stats/coefficient-of-variation.ts';
import { median } from '#lib/stats/median.ts';
import { signTest } from '#lib/stats/sign-test.ts';
import { exceeds, reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { recentDays, rungDays } from '../rung-days.ts';
import { type ComparedDay, comparedDays, percentBehind, type SidePair, sayingPairs } from '../side-pairs.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import { stepBeingTried } from '../steps-tried.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { counted, inMeasure, plainNumber } from '../words.ts';

const KIND = 'side-gap';
const DAYS_A_WEEK = 7;

export const sideGap: Check = {
  kind: KIND,
  title: 'One side behind',
  question: 'Is the same side behind on one rung, day after day, by more than it varies?',
  evaluate: (view, limits) =>
    standingsOf(view)
      .filter(({ rung, side }) => side === 'both' && rung.eachSide && !rung.measure.startsWith('range'))
      .map((standing) => judge(view, standing, limits)),
};

type Gap = {
  side: 'left' | 'right';
  /** Median gap of the last pairs, % of the larger side. */
  percent: number;
  pairs: number;
  lower: number;
  untied: number;
  p: number;
  variation: number;
  last: readonly SidePair[];
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const days = recentDays(view, rungDays(view, standing.rung.id), limits['sideGap.days']).filter(
    (day) => day.date >= standing.from,
  );
  const compared = comparedDays(days, standing.rung);
  const pairs = sayingPairs(compared);
  const gap = gapOf(pairs, limits);
  if (!gap) {
    const untied = pairs.filter(({ left, right }) => left !== right).length;
    const missing = `${untied} of ${counted(limits['sideGap.pairs'], 'untied pair')} in ${limits['sideGap.days']} days`;
    return {
      status: 'not-enough-history',
      kind: KIND,
      subject,
      missing: missing + openEndedAsked(compared, limits),
    };
  }
  if (!isBehind(gap, limits)) return { status: 'clear', kind: KIND, subject };
  if (isWorkedOn(view, standing, gap, pairs, limits))
    return { status: 'clear', kind: KIND, subject, lowerBound: true };
  return found(standing, gap, limits);
}

/**
 * Said when most of the last pairs ended at the target on both sides and none of the last two weeks says anything:
 * how far the sides are apart can not be seen from those.
 */
function openEndedAsked(all: readonly ComparedDay[], limits: Limits): string {
  const last = all.slice(-limits['sideGap.lastPairs']);
  const newest = last.at(-1)?.pair.date;
  const ended = last.filter((pair) => pair.saysNothing).length;
  if (newest === undefined || last.length < limits['sideGap.lastPairs'] || ended * 2 <= last.length)
    return '';
  const weeks = limits['sideGap.openEndedWeeks'];
  const from = addDays(newest, -weeks * DAYS_A_WEEK);
  if (last.some((one) => !one.saysNothing && one.pair.date > from)) return '';
  return `; both sides reached the target on ${ended} of ${counted(last.length, 'day')}: ask for one open-ended set every ${counted(weeks, 'week')}`;
}

/** Undefined under six untied pairs. */
function gapOf(pairs: readonly SidePair[], limits: Limits): Gap | undefined {
  const leftLower = pairs.filter(({ left, right }) => left < right).length;
  const rightLower = pairs.filter(({ left, right }) => right < left).length;
  const untied = leftLower + rightLower;
  if (untied < limits['sideGap.pairs']) return undefined;
  const side = leftLower >= rightLower ? 'left' : 'right';
  const lower = Math.max(leftLower, rightLower);
  const last = pairs.slice(-limits['sideGap.lastPairs']);
  const variation = Math.max(
    coefficientOfVariation(pairs.map((pair) => pair.left)) ?? 0,
    coefficientOfVariation(pairs.map((pair) => pair.right)) ?? 0,
  );
  return {
    side,
    percent: median(last.map((pair) => percentBehind(pair, side))) ?? 0,
    pairs: pairs.length,
    lower,
    untied,
    p: signTest(lower, untied - lower) ?? 1,
    variation,
    last,
  };
}

function isBehind({ p, percent, variation }: Gap, limits: Limits): boolean {
  return (
    exceeds(limits['sideGap.p'], p) &&
    reaches(percent, limits['sideGap.watchPercent']) &&
    exceeds(percent, variation)
  );
}

/** Silent until the step's review date, unless 10 points worse than when it was taken. */
function isWorkedOn(
  view: ClientView,
  standing: Standing,
  gap: Gap,
  pairs: readonly SidePair[],
  limits: Limits,
): boolean {
  const step = stepBeingTried(view, standing, limits);
  if (!step) return false;
  const before = pairs.filter((pair) => pair.date <= step.takenOn).slice(-limits['sideGap.lastPairs']);
  const then = median(before.map((pair) => percentBehind(pair, gap.side)));
  return then === undefined || exceeds(then + limits['sideGap.worsePoints'], gap.percent);
}

function found(standing: Standing, gap: Gap, limits: Limits): Outcome {
  const { rung } = standing;
  const subject = { ...subjectOf(standing), label: `${rung.name}, ${gap.side}`, side: gap.side };
  const weaker = median(gap.last.map((pair) => pair[gap.side])) ?? 0;
  const other = gap.side === 'left' ? 'right' : 'left';
  const stronger = median(gap.last.map((pair) => pair[other])) ?? 0;
  const act = reaches(gap.percent, limits['sideGap.actPercent']);
  return findingOf(
    {
      kind: KIND,
      subject,
      level: act ? 'act' : 'watch',
      sentence: `${rung.name}: ${gap.side} **${plainNumber(gap.percent, 0)} %** behind, ${inMeasure(weaker, rung)} against ${inMeasure(stronger, rung)}, lower on ${gap.lower} of ${gap.untied} days.`,
      short: `${rung.name}: ${gap.side} ${plainNumber(gap.percent, 0)} % behind`,
      since: gap.last[0]?.date ?? standing.from,
      step: {
        kind: 'one-side-back',
        text: `${gap.side === 'left' ? 'Left' : 'Right'} one support back, ${other} held at the ${gap.side}'s number; film from behind, look at the base, compare with the side that holds`,
      },
      clears: `median gap of the last ${limits['sideGap.lastPairs']} pairs under ${limits['sideGap.watchPercent']} %, or within what the sides vary`,
      evidence: {
        side: gap.side,
        percent: roundTo(gap.percent, 2),
        lower: gap.lower,
        untied: gap.untied,
        pairs: gap.pairs,
        p: roundTo(gap.p, 5),
        variation: roundTo(gap.variation, 2),
        weaker: roundTo(weaker, 2),
        stronger: roundTo(stronger, 2),
        severity: Math.floor(gap.percent / limits['sideGap.worsePoints']),
      },
      inputs: [
        {
          name: 'median gap of the last pairs',
          value: roundTo(gap.percent, 1),
          unit: '% of the larger side',
        },
        {
          name: `days with the ${gap.side} lower`,
          value: `${gap.lower} of ${gap.untied}`,
          unit: 'untied pairs',
        },
        { name: 'sign test, one-sided', value: roundTo(gap.p, 4), unit: 'p' },
        { name: 'larger variation within a side', value: roundTo(gap.variation, 1), unit: '%' },
      ],
      formula:
        'same-day pairs, each the mean of the clean sets both sides have; gap = (larger - smaller) / larger; same side lower by the sign test, and the median of the last 6 larger than the larger variation within a side (Exell 2012)',
      thresholds: [
        'sideGap.pairs',
        'sideGap.days',
        'sideGap.p',
        'sideGap.lastPairs',
        'sideGap.watchPercent',
        'sideGap.actPercent',
      ],
      doubt:
        'A pair in which both sides reached the target says nothing: one open-ended set every other week shows more. Gaps of 10-15 % are common; the bands are mostly used, not proven.',
    },
    limits,
  );
}
