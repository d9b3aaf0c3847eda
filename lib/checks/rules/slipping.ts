import type { Outcome } from '#lib/domain/finding.ts';
import { median } from '#lib/stats/median.ts';
import { exceeds, reaches } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { scoredDays } from '../score.ts';
import { type Standing, standingsOf, subjectOf } from '../standings.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { asPercent, counted, dayInWords, plainNumber } from '../words.ts';

const KIND = 'slipping';

export const slipping: Check = {
  kind: KIND,
  title: 'Slipping',
  question: 'Are the last results on a rung all well under what they were in the weeks before?',
  evaluate: (view, limits) => standingsOf(view).map((standing) => judge(view, standing, limits)),
};

function judge(view: ClientView, standing: Standing, limits: Limits): Outcome {
  const subject = subjectOf(standing);
  const { rung, side } = standing;
  const days = scoredDays(view, rung, side, limits).filter((day) => day.date >= standing.from);
  const last = days.slice(-limits['slipping.lastScores']);
  const newest = last.at(-1);
  // Counted back from the newest score: silence does not change what it is held against.
  const end = newest?.at ?? 0;
  const [from, to] = [end - limits['slipping.beforeToDays'], end - limits['slipping.beforeFromDays']];
  const before = days.slice(0, days.length - last.length).filter(({ at }) => at >= from && at <= to);
  const few = before.length < limits['slipping.beforeAtLeast'] || last.length < limits['slipping.lastScores'];
  if (few || !newest || view.days.length - 1 - newest.at > limits['slipping.latestWithinDays']) {
    const missing = few
      ? `${before.length} of ${counted(limits['slipping.beforeAtLeast'], 'training day')} before the last ${limits['slipping.lastScores']}`
      : `no score in ${limits['slipping.latestWithinDays']} days`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const usual = median(before.map((day) => day.score)) ?? 0;
  const now = median(last.map((day) => day.score)) ?? 0;
  const allUnder = last.every((day) => exceeds(usual, day.score));
  const drop = (1 - now / usual) * 100;
  // Nothing is under a usual of nothing, of which no drop can be said.
  if (!allUnder || !reaches(drop, limits['slipping.dropPercent']))
    return { status: 'clear', kind: KIND, subject };
  const balance = rung.family === 'balance' && rung.measure === 'hold';
  const note = balance && !reaches(drop, limits['slipping.balancePercent']);
  return findingOf(
    {
      kind: KIND,
      subject,
      level: note ? 'note' : 'watch',
      sentence: `${subject.label}: **${plainNumber(drop, 0)} %** under before, ${asPercent(now)} of the pass mark on the last ${last.length} training days against ${asPercent(usual)}.`,
      short: `${subject.label}: ${plainNumber(drop, 0)} % under before`,
      since: last[0]?.date ?? newest.date,
      step: {
        kind: 'look',
        text: 'Ask about sleep, work and pain; an easy week before anything else changes',
      },
      clears: `one of the last ${last.length} scores back at ${asPercent(usual)}, or their median less than ${limits['slipping.dropPercent']} % under it`,
      evidence: {
        dropPercent: roundTo(drop, 2),
        now: roundTo(now, 4),
        before: roundTo(usual, 4),
        daysBefore: before.length,
      },
      inputs: [
        ...last.map((day) => ({
          name: dayInWords(day.date),
          value: Math.round(day.score * 100),
          unit: '% of the pass mark',
        })),
        {
          name: `median of ${before.length} training days before`,
          value: Math.round(usual * 100),
          unit: '% of the pass mark',
        },
      ],
      formula:
        'the last 3 scores are all under the median of the training days 14-70 days back, and their median is 15 % under it (balance holds: a note, a row from 25 %)',
      thresholds: [
        'slipping.lastScores',
        'slipping.dropPercent',
        'slipping.beforeFromDays',
        'slipping.beforeToDays',
        'slipping.beforeAtLeast',
        'slipping.latestWithinDays',
        'slipping.balancePercent',
      ],
      doubt: 'Where results vary by 12-20 % from day to day this is wrong more often (own simulation).',
    },
    limits,
  );
}
