import type { AsOf } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { CHECKS } from '../registry.ts';
import { settle } from '../settle.ts';
import type { Limits } from '../thresholds.ts';
import type { ClientView } from '../types.ts';
import { buildView } from '../view.ts';
import { newReplay, type Replay, type ReplayAct, replayNight } from './replay-reasons.ts';

export type ReplayAsked = {
  history: ClientHistory;
  /** What coaches did with this client's reasons. */
  acts: readonly ReplayAct[];
  /** Evenings to run again, one after the other, each with the instant its night was due. */
  nights: readonly AsOf[];
  /** Nights of this client that were finished before the first of them. */
  nightsDone: number;
  kinds: readonly CheckKind[];
  /** Whether numbers that more than one check reads differ between the runs. */
  shared: boolean;
};

/**
 * The nights of one client run again under two sets of numbers, each by the check-ins that had been sent when it was
 * due: what would have been raised, when it would have gone. Only `kinds` are asked, and both runs begin without any
 * reason. Pure.
 */
export function replayClient(
  asked: ReplayAsked,
  runs: readonly [Limits, Limits],
): { before: Replay; after: Replay } {
  const { history, acts, nights, shared } = asked;
  const checks = CHECKS.filter(({ kind }) => asked.kinds.includes(kind));
  const sayTonight = (view: ClientView, limits: Limits) =>
    settle(
      view,
      checks.flatMap((check) => check.evaluate(view, limits)),
      limits,
    );
  const [before, after] = [newReplay(acts), newReplay(acts)];
  const inOrder = [...history.checkIns].sort((a, b) => (a.sentAt < b.sentAt ? -1 : 1));
  nights.forEach((night, index) => {
    const sent = { ...history, checkIns: inOrder.filter(({ sentAt }) => sentAt <= night.instant) };
    const nightsDone = asked.nightsDone + index;
    const [now, then] = runs;
    const view = buildView(sent, night, now);
    replayNight(before, sayTonight(view, now), night, { limits: now, nightsDone });
    const other = shared ? buildView(sent, night, then) : view;
    replayNight(after, sayTonight(other, then), night, { limits: then, nightsDone });
  });
  return { before, after };
}
