import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { exceeds, reaches } from './compare.ts';
import { isResting } from './contact-silence.ts';
import { findingOf } from './finding-of.ts';
import { roundTo, whole } from './in-numbers.ts';
import { loadsOf } from './load-series.ts';
import { daysHere, newStartAt } from './new-start.ts';
import { bandOf } from './return-band.ts';
import type { Limits } from './thresholds.ts';
import type { ClientView } from './types.ts';
import { totalUpTo } from './usual-week.ts';
import { asPercent, counted, plainNumber } from './words.ts';

const SUBJECT: Subject = { key: 'start-after-break', label: '' };

/**
 * A client who told at intake of three weeks or more without training: in the first two weeks here a return plan is to
 * be written where there is no plan, and the first week is held against a share of the told usual week. Undefined where
 * nothing of the kind was told, and afterwards. Shares: common practice, no source.
 */
export function startAfterBreak(view: ClientView, limits: Limits): Outcome | undefined {
  const { breakWeeks = 0, toldWeekAu } = view.history.client;
  const length = limits['week.days'];
  const days = Math.floor(breakWeeks * length);
  const isOver = daysHere(view) > limits['returnTooFast.shownDays'] || newStartAt(view) > 0;
  if (days < limits['returnTooFast.mediumDays'] || isOver || isResting(view)) return undefined;
  const { date } = view.asOf;
  const hasPlan = view.history.plans.some(({ until }) => until === null || until >= date);
  if (!hasPlan) return raised(view, { days, share: undefined, total: 0 }, limits);
  if (toldWeekAu === null || toldWeekAu <= 0) {
    const missing = 'no usual week told before the start';
    return { status: 'not-enough-history', kind: 'return-too-fast', subject: SUBJECT, missing };
  }
  const { session } = loadsOf(view);
  const end = Math.min(view.days.length, length) - 1;
  const week = totalUpTo(session, end, end + 1);
  const share = week.total / toldWeekAu;
  if (!exceeds(share, limits[bandOf(days, limits).share]))
    return { status: 'clear', kind: 'return-too-fast', subject: SUBJECT, lowerBound: week.known < week.of };
  return raised(view, { days, share, total: week.total }, limits);
}

type Found = { days: number; share: number | undefined; total: number };

function raised(view: ClientView, { days, share, total }: Found, limits: Limits): Outcome {
  const band = bandOf(days, limits);
  const allowed = limits[band.share];
  const before = `${plainNumber(days / limits['week.days'], 0)} weeks without training before the start`;
  const told = view.history.client.toldWeekAu ?? 0;
  const isPlanless = share === undefined;
  return findingOf(
    {
      kind: 'return-too-fast',
      subject: SUBJECT,
      level: !isPlanless && reaches(share, 1) ? 'act' : 'watch',
      sentence: isPlanless
        ? `**${before}**: a first week of ${asPercent(allowed)} of usual would be a step back in, and no plan is written.`
        : `${before}: the first week here is at **${asPercent(share)} of the told usual week** (${whole(total)} AU of ${whole(told)}); a step back in would be ${asPercent(allowed)}.`,
      short: isPlanless ? 'return plan to write' : `return at ${asPercent(share)}`,
      since: view.days[0]?.date ?? view.asOf.date,
      step: isPlanless
        ? { kind: 'new-plan', text: 'Write the plan of the return' }
        : { kind: 'cut-volume', text: band.step },
      clears: `${isPlanless ? 'A plan, or ' : ''}${counted(limits['returnTooFast.shownDays'], 'day')} here.`,
      evidence: {
        breakDays: days,
        weekAu: roundTo(total, 1),
        toldAu: told,
        share: isPlanless ? null : roundTo(share, 2),
        allowed,
      },
      inputs: [
        { name: 'days without training, told at intake', value: days, unit: 'days' },
        { name: 'load of the first 7 days', value: roundTo(total, 1), unit: 'AU' },
        { name: 'told usual week', value: told, unit: 'AU' },
      ],
      formula: 'Session load of the first 7 days here over the usual week told at intake.',
      thresholds: ['returnTooFast.mediumDays', 'returnTooFast.shownDays', band.share],
      doubt: 'What was told of weeks before the start is from memory, and the shares are rules of thumb.',
    },
    limits,
  );
}
