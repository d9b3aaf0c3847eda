import type { AsOf, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { CHECKS } from '../registry.ts';
import { settle } from '../settle.ts';
import type { Limits } from '../thresholds.ts';
import type { Check, ClientView } from '../types.ts';
import { nextView } from '../view-next.ts';
import type { Reading } from './kinds-reading.ts';
import { newReplay, type Replay, type ReplayAct, replayNight } from './replay-reasons.ts';

export type ReplayAsked = Reading & {
  history: ClientHistory;
  /** What coaches did with this client's reasons. */
  acts: readonly ReplayAct[];
  /** Evenings to run again, one after the other, each with the instant its night was due. */
  nights: readonly AsOf[];
  /** Nights of this client that were finished before the first of them. */
  nightsDone: number;
};
type Runs = readonly [Limits, Limits];
type Replayed = { before: Replay; after: Replay };

/**
 * The nights of one client run again under two sets of numbers, each by the check-ins that had been sent when it was
 * due: what would have been raised, when it would have gone. Kinds that the numbers do not touch are left out, but for a
 * step that would no longer be held back, or now is. Both runs begin without any reason. Pure.
 */
export function replayClient(asked: ReplayAsked, runs: Runs): Replayed {
  const { differs, ...replayed } = run(asked, asked.settled, runs);
  if (!differs || asked.heldBack.length === 0) return replayed;
  const held = run(asked, asked.heldBack, runs);
  const steps = ({ stays }: Replay) => stays.filter(({ kind }) => kind === 'step-up-earned');
  replayed.before.stays.push(...steps(held.before));
  replayed.after.stays.push(...steps(held.after));
  return replayed;
}

function run(
  asked: ReplayAsked,
  kinds: readonly CheckKind[],
  [now, then]: Runs,
): Replayed & { differs: boolean } {
  const { history, acts, nights, shared, touched } = asked;
  const checks = CHECKS.filter(({ kind }) => kinds.includes(kind));
  const inOrder = [...history.checkIns].sort((a, b) =>
    a.sentAt < b.sentAt ? -1 : a.sentAt > b.sentAt ? 1 : 0,
  );
  const [before, after] = [newReplay(acts), newReplay(acts)];
  let differs = false;
  let view: ClientView | undefined;
  let sent: ClientHistory = { ...history, checkIns: [] };
  nights.forEach((night, index) => {
    const count = countSent(inOrder, night.instant);
    if (count !== sent.checkIns.length) sent = { ...history, checkIns: inOrder.slice(0, count) };
    const nightsDone = asked.nightsDone + index;
    view = nextView(sent, night, now, view);
    const said = outcomesOf(checks, view, now);
    // The sets of the same days: worked out once for both.
    const other = shared ? nextView(sent, night, then, view) : view;
    // A rule that reads none of the numbers says the same again.
    const again = { said, touched };
    const saidThen = outcomesOf(checks, other, then, again);
    differs ||= asked.heldBack.length > 0 && areApart(said, saidThen);
    replayNight(before, settle(view, said.flat(), now), night, { limits: now, nightsDone });
    replayNight(after, settle(other, saidThen.flat(), then), night, { limits: then, nightsDone });
  });
  return { before, after, differs };
}

/** How many of the check-ins, in the order of sending, had been sent by then. */
function countSent(inOrder: readonly { sentAt: string }[], instant: string): number {
  let [low, high] = [0, inOrder.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((inOrder[middle]?.sentAt ?? '') <= instant) low = middle + 1;
    else high = middle;
  }
  return low;
}

type Again = { said: readonly Outcome[][]; touched: readonly CheckKind[] };

function outcomesOf(checks: readonly Check[], view: ClientView, limits: Limits, again?: Again): Outcome[][] {
  return checks.map((check, index) => {
    const known = again?.said[index];
    if (known && !again.touched.includes(check.kind)) return known;
    return check.evaluate(view, limits);
  });
}

/** Whether two nights flag other things, or weigh them otherwise. */
function areApart(said: readonly Outcome[][], then: readonly Outcome[][]): boolean {
  return said.some((one, at) => {
    const other = then[at] ?? [];
    return one !== other && wordsOf(one) !== wordsOf(other);
  });
}

/** What is flagged, with what it may hold back. */
function wordsOf(said: readonly Outcome[]): string {
  return said
    .flatMap((one) =>
      one.status === 'flagged' ? [one.kind, one.subject.key, one.tier, one.level, one.evidence.tissues] : [],
    )
    .join(' ');
}
