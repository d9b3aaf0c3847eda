import type { Outcome, Subject } from '#lib/domain/finding.ts';
import { median } from '#lib/stats/median.ts';
import { exceeds } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { bestHolds, daysOn, type KindOfHold, kindsOfHold } from '../holds-of-window.ts';
import { roundTo } from '../in-numbers.ts';
import { recentDays } from '../rung-days.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { asPercent, plainNumber } from '../words.ts';

const KIND = 'window-gap';
export const windowGap: Check = {
  kind: KIND,
  title: 'Balance window',
  question: 'Is one edge of the balance window, heel pulls or toe pulls, much shorter than the other?',
  evaluate: (view, limits) => kindsOfHold(view).map((hold) => judge(view, hold, limits)),
};

function judge(view: ClientView, { name, over, under }: KindOfHold, limits: Limits): Outcome {
  const subject: Subject = {
    key: `window:${name}`,
    label: name === '' ? 'balance window' : `balance window, ${name}`,
  };
  const recent = recentDays(view, daysOn(view, [...over, ...under]), limits['windowGap.days']);
  const heel = bestHolds(recent, over);
  const toe = bestHolds(recent, under);
  const needed = limits['windowGap.holds'];
  if (heel.length < needed || toe.length < needed) {
    const missing = `${heel.length} and ${toe.length} of ${needed} days with heel pulls and toe pulls in ${limits['windowGap.days']} days`;
    return { status: 'not-enough-history', kind: KIND, subject, missing };
  }
  const [heelHold, toeHold] = [median(heel) ?? 0, median(toe) ?? 0];
  const larger = Math.max(heelHold, toeHold);
  const apart = Math.abs(heelHold - toeHold);
  if (!exceeds(apart, limits['windowGap.share'] * larger)) return { status: 'clear', kind: KIND, subject };
  const share = apart / larger;
  const weaker = heelHold < toeHold ? 'heel pulls' : 'toe pulls';
  return findingOf(
    {
      kind: KIND,
      subject,
      level: 'watch',
      sentence: `Heel pulls ${plainNumber(heelHold)} s, toe pulls ${plainNumber(toeHold)} s (medians of ${heel.length} and ${toe.length} best holds): **${asPercent(share)}** apart.`,
      short: `${weaker} ${asPercent(share)} shorter`,
      since: recent.map((day) => day.date).sort()[0] ?? view.asOf.date,
      step: { kind: 'more-time', text: `More time for ${weaker}, at the start of the session` },
      clears: 'medians within a third of the larger',
      evidence: {
        heel: heelHold,
        toe: toeHold,
        share: roundTo(share, 4),
        heelDays: heel.length,
        toeDays: toe.length,
      },
      inputs: [
        { name: 'heel pull, median of best holds', value: heelHold, unit: 's' },
        { name: 'toe pull, median of best holds', value: toeHold, unit: 's' },
      ],
      formula:
        'difference of the medians of the best clean hold of a day, as a share of the larger; 5 days each in 42',
      thresholds: ['windowGap.holds', 'windowGap.days', 'windowGap.share'],
      doubt: 'A hold that stops at the planned number hides how long it could have been.',
    },
    limits,
  );
}
