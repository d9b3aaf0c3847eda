import type { Outcome, Subject } from '#lib/domain/finding.ts';
import type { HistoryRung } from '#lib/domain/history.ts';
import { median } from '#lib/stats/median.ts';
import { exceeds } from '../compare.ts';
import { findingOf } from '../finding-of.ts';
import { roundTo } from '../in-numbers.ts';
import { type RungDay, recentDays, rungDays } from '../rung-days.ts';
import { hasResult } from '../set-result.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { asPercent, plainNumber } from '../words.ts';

const KIND = 'window-gap';
/** The two parts of the starter library that train the two edges of the balance window. */
const PARTS = { over: 'Over-balance', under: 'Under-balance' } as const;

export const windowGap: Check = {
  kind: KIND,
  title: 'Balance window',
  question: 'Is one edge of the balance window, heel pulls or toe pulls, much shorter than the other?',
  evaluate: (view, limits) => kindsOfHold(view).map((hold) => judge(view, hold, limits)),
};

/** Rungs of one kind: the name without the ladder's own ("short holds", "hands further out"); both edges have it. */
type KindOfHold = { name: string; over: HistoryRung[]; under: HistoryRung[] };

function kindsOfHold(view: ClientView): KindOfHold[] {
  const kinds = new Map<string, KindOfHold>();
  for (const rung of view.rungs.values()) {
    if (rung.measure !== 'hold' || (rung.part !== PARTS.over && rung.part !== PARTS.under)) continue;
    const name = rung.name.startsWith(rung.ladder)
      ? rung.name.slice(rung.ladder.length).replace(/^, /, '')
      : rung.name;
    const kind = kinds.get(name) ?? { name, over: [], under: [] };
    kind[rung.part === PARTS.over ? 'over' : 'under'].push(rung);
    kinds.set(name, kind);
  }
  return [...kinds.values()]
    .filter(({ over, under }) => over.length > 0 && under.length > 0)
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

function judge(view: ClientView, { name, over, under }: KindOfHold, limits: Limits): Outcome {
  const subject: Subject = {
    key: `window:${name}`,
    label: name === '' ? 'balance window' : `balance window, ${name}`,
  };
  const daysOn = (rungs: readonly HistoryRung[]) => rungs.flatMap((rung) => rungDays(view, rung.id));
  const recent = recentDays(view, [...daysOn(over), ...daysOn(under)], limits['windowGap.days']);
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

/** Best clean hold of each day, on rungs of one kind. */
function bestHolds(days: readonly RungDay[], rungs: readonly HistoryRung[]): number[] {
  const best = new Map<string, number>();
  for (const day of days.filter((each) => each.counts)) {
    for (const set of day.sets.filter(hasResult)) {
      if (set.clean && rungs.some((rung) => rung.id === set.rungId))
        best.set(day.date, Math.max(set.value, best.get(day.date) ?? 0));
    }
  }
  return [...best.values()];
}
