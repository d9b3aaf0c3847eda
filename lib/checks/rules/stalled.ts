import type { Fact, Outcome } from '#lib/domain/finding.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { daysBetween } from '#lib/domain/local-date.ts';
import { median } from '#lib/stats/median.ts';
import { isSlopeUnder, theilSen } from '#lib/stats/theil-sen.ts';
import { exceeds, reaches } from '../compare.ts';
import { daysKnownOf, findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { askedNow, asksPassMark } from '../plan-items.ts';
import { isHardlyTrained, plannedPractice } from '../planned-practice.ts';
import { rungDays } from '../rung-days.ts';
import { type ScoredDay, scoredDays } from '../score.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import { daysSinceChange, stepBeingTried } from '../steps-tried.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { asPercent, counted, passInWords, plainNumber } from '../words.ts';

const KIND = 'stalled';
const DAYS_A_WEEK = 7;
const SLOPE_DAYS = 28;

export const stalled: Check = {
  kind: KIND,
  title: 'Stalled',
  question: 'Is a rung trained honestly for longer than usual, without gain?',
  evaluate: (view, limits) => standingsOf(view).map((standing) => judge(view, standing, limits)),
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const { rung, side } = standing;
  // A step is being tried: the open reason waits for its review, it is neither raised nor closed.
  if (stepBeingTried(view, standing, limits))
    return { status: 'clear', kind: KIND, subject, lowerBound: true };
  const trained = rungDays(view, rung.id).filter((day) => day.date >= standing.from);
  const newest = trained.at(-1);
  // Everything is counted back from the last training day on the rung: silence neither raises nor closes.
  if (!newest || view.days.length - 1 - newest.at >= limits['stalled.recentDays']) {
    const missing = `no training day in ${limits['stalled.recentDays']} days`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const onRung = daysOnRung(view, standing, newest.date);
  const least = Math.max(limits['stalled.minDays'], usualDays(rung, limits) * patience(rung, limits));
  const silent =
    onRung < least ||
    !askedNow(view, rung.id, side).some((item) => asksPassMark(item, rung)) ||
    daysSinceChange(view, standing) < limits['stalled.quietAfterChangeDays'] ||
    isHardlyTrained(plannedPractice(view, standing, limits), limits);
  if (silent) return { status: 'clear', kind: KIND, subject };
  const ago = (day: ScoredDay) => newest.at - day.at;
  const within = scoredDays(view, rung, side, limits).filter(
    (day) => day.date >= standing.from && ago(day) < limits['stalled.withinDays'],
  );
  const recent = within.filter((day) => ago(day) < limits['stalled.recentDays']).length;
  const missing = missingDays(within, recent, limits);
  if (missing !== undefined) return { status: 'not-enough-history', kind: KIND, subject, missing };
  const score = median(within.slice(-limits['stalled.lastScores']).map((day) => day.score)) ?? 1;
  if (reaches(score, limits['stalled.scoreUnder'])) return { status: 'clear', kind: KIND, subject };
  const points = within.map(({ at, score: value }) => ({ at, value }));
  // Far over the limit in nearly all cases: ask that first, with room for rounding.
  const clearly = (limits['stalled.slopePercent'] / 100 / SLOPE_DAYS) * 1.001;
  if (!isSlopeUnder(points, limits['stalled.interval'], clearly))
    return { status: 'clear', kind: KIND, subject };
  const slope = theilSen(points, limits['stalled.interval']);
  if (!slope) return { status: 'clear', kind: KIND, subject };
  const gain = slope.upper * SLOPE_DAYS * 100;
  if (reaches(gain, limits['stalled.slopePercent'])) return { status: 'clear', kind: KIND, subject };
  return found(
    view,
    standing,
    { onRung, least, score, gain, slope: slope.slope * SLOPE_DAYS * 100, within, recent },
    limits,
  );
}

/** What the team's own clients need, once enough of them passed; else the library's weeks. */
function usualDays({ usualDaysHere: here, usualWeeks }: HistoryRung, limits: Limits): number {
  return here && here.passed >= limits['stalled.usualTimeClients'] ? here.days : usualWeeks * DAYS_A_WEEK;
}

/** Where one rep is a large part of the pass mark, the log shows nothing of what is gained in between: wait longer. */
function patience({ measure, pass }: HistoryRung, limits: Limits): number {
  const whole = measure === 'reps' || measure === 'made-tried';
  return whole && reaches(1 / pass.target, limits['stalled.coarseShare']) ? limits['stalled.coarseTimes'] : 1;
}

/** Which usual time was used, where the team has one of its own. */
function usualFacts({ usualDaysHere: here, usualWeeks }: HistoryRung, limits: Limits): Fact[] {
  if (!here) return [];
  const [passed, needed] = [here.passed, limits['stalled.usualTimeClients']];
  if (passed >= needed)
    return [{ name: 'usual time here', value: here.days, unit: `days, ${counted(passed, 'client')} passed` }];
  const value = plainNumber(usualWeeks * DAYS_A_WEEK);
  const unit = `days, ${passed} of ${counted(needed, 'client')} passed here`;
  return [{ name: "usual time, the library's", value: Number(value), unit }];
}

/** From the first training day here, where the history reaches back that far; else from the placement. */
function daysOnRung(view: ClientView, { rung, from }: Standing, until: string): number {
  const first = rungDays(view, rung.id).find((day) => day.date >= from)?.date;
  const reachesBack = (view.days[0]?.date ?? from) <= from;
  return daysBetween(reachesBack && first !== undefined ? first : from, until);
}

function missingDays(within: readonly ScoredDay[], recent: number, limits: Limits): string | undefined {
  const [least, window] = [limits['stalled.trainingDays'], limits['stalled.withinDays']];
  if (within.length < least)
    return `${within.length} of ${counted(least, 'training day')} with a score in ${window} days`;
  const span = (within.at(-1)?.at ?? 0) - (within[0]?.at ?? 0);
  if (exceeds(limits['stalled.overDays'], span))
    return `training days over ${span} of ${limits['stalled.overDays']} days`;
  const [leastNow, now] = [limits['stalled.recentTrainingDays'], limits['stalled.recentDays']];
  return recent < leastNow ? `${recent} of ${counted(leastNow, 'training day')} in ${now} days` : undefined;
}

type Figures = {
  onRung: number;
  least: number;
  score: number;
  /** Upper end and middle of the slope, % of the target in 28 days. */
  gain: number;
  slope: number;
  within: readonly ScoredDay[];
  recent: number;
};

function found(view: ClientView, standing: Standing, figures: Figures, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const { onRung, least, score, gain, within, recent } = figures;
  const most = gain > 0 ? `gain at most ${plainNumber(gain)} % in 28 days` : 'no gain in 28 days';
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `${subject.label}: **${asPercent(score)}** of ${passInWords(standing.rung)} after ${onRung} days on this rung, ${most}; ${recent} training days in 28.`,
      short: `${subject.label}: same rung for ${Math.floor(onRung / DAYS_A_WEEK)} weeks`,
      since: within[0]?.date ?? standing.from,
      step: {
        kind: 'one-rung-back',
        text: 'One rung back with more time there, or a rung split into smaller steps',
      },
      clears: `last ${limits['stalled.lastScores']} scores at ${asPercent(limits['stalled.scoreUnder'])} of the pass mark, a gain of ${limits['stalled.slopePercent']} % in 28 days, or another rung`,
      evidence: {
        score: roundTo(score, 4),
        daysOnRung: onRung,
        leastDays: least,
        slopePercent: roundTo(figures.slope, 2),
        slopeUpperPercent: roundTo(gain, 2),
        trainingDays: within.length,
        recentTrainingDays: recent,
      },
      inputs: [
        { name: 'days on this rung', value: onRung, unit: `days, from ${least} on` },
        ...usualFacts(standing.rung, limits),
        { name: 'median of the last scores', value: Math.round(score * 100), unit: '% of the pass mark' },
        { name: 'slope', value: roundTo(figures.slope, 1), unit: '% of the target in 28 days' },
        { name: 'slope, upper end', value: roundTo(gain, 1), unit: '% of the target in 28 days' },
        { name: `training days in ${limits['stalled.withinDays']} days`, value: within.length, unit: 'days' },
        { name: 'training days in 28 days', value: recent, unit: 'days' },
      ],
      formula: `score = share of the pass mark on a training day; stalled when the median of the last ${limits['stalled.lastScores']} is under ${asPercent(limits['stalled.scoreUnder'])} and the upper end of the ${asPercent(limits['stalled.interval'])} interval of the Theil-Sen slope is under ${limits['stalled.slopePercent']} % of the target in 28 days; where one rep is ${asPercent(limits['stalled.coarseShare'])} of the pass mark or more, asked after ${limits['stalled.coarseTimes']} x the usual time`,
      thresholds: [
        'stalled.minDays',
        'stalled.coarseShare',
        'stalled.coarseTimes',
        'stalled.trainingDays',
        'stalled.overDays',
        'stalled.withinDays',
        'stalled.recentTrainingDays',
        'stalled.recentDays',
        'stalled.lastScores',
        'stalled.scoreUnder',
        'stalled.interval',
        'stalled.slopePercent',
        'stalled.quietAfterChangeDays',
        ...(standing.rung.usualDaysHere ? (['stalled.usualTimeClients'] as const) : []),
      ],
      daysKnown: daysKnownOf(view.days.slice(-limits['stalled.withinDays'])),
      doubt:
        'A slow client is not a stuck one: in an own simulation one in sixteen clients with nothing wrong, and one in seven of the slow ones, was called stalled at some time in half a year.',
    },
    limits,
  );
}
