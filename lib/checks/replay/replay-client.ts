import type { AsOf, Outcome } from '#lib/domain/finding.ts';
import type { ClientHistory } from '#lib/domain/history.ts';
import type { CheckKind } from '#lib/domain/vocabulary.ts';
import { CHECKS } from '../registry.ts';
import { settle } from '../settle.ts';
import type { Limits } from '../thresholds.ts';
import type { ClientView } from '../types.ts';
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
  const known: Known[] = [];
  const { differs, ...replayed } = run(asked, asked.settled, runs, known);
  if (!differs || asked.heldBack.length === 0) return replayed;
  const held = run(asked, asked.heldBack, runs, known);
  const steps = ({ stays }: Replay) => stays.filter(({ kind }) => kind === 'step-up-earned');
  replayed.before.stays.push(...steps(held.before));
  replayed.after.stays.push(...steps(held.after));
  return replayed;
}

/** What a kind said on one night, under the numbers in force and under the others. */
type Known = Map<CheckKind, { said: Outcome[]; anew: Outcome[] }>;

/** `known`: night by night what was said already; what is said now is added. */
function run(
  asked: ReplayAsked,
  kinds: readonly CheckKind[],
  [now, then]: Runs,
  known: Known[],
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
    const tonight: ClientView = nextView(sent, night, now, view);
    view = tonight;
    const there = known[index] ?? (new Map() as Known);
    known[index] = there;
    const said = checks.map(({ kind, evaluate }) => there.get(kind)?.said ?? evaluate(tonight, now));
    // The sets of the same days: worked out once for both.
    const other = shared ? nextView(sent, night, then, tonight) : tonight;
    const saidThen = checks.map(({ kind, evaluate }, at) => {
      const before = there.get(kind);
      if (before) return before.anew;
      // A rule that reads none of the numbers says the same again.
      return (touched.includes(kind) ? undefined : said[at]) ?? evaluate(other, then);
    });
    checks.forEach(({ kind }, at) => {
      there.set(kind, { said: said[at] ?? [], anew: saidThen[at] ?? [] });
    });
    differs ||= asked.heldBack.length > 0 && areApart(said, saidThen);
    replayNight(before, settle(tonight, said.flat(), now), night, { limits: now, nightsDone });
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
