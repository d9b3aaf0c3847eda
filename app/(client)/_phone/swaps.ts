import type { HistorySet } from '#lib/domain/history.ts';
import type { PhoneDrill, PhoneSession } from '#lib/views/phone-session.ts';
import { type Draft, plannedSets, setKey } from './draft.ts';

/** What is done about drills a limit rules out, by key of the drill: a swap by its place, or the drill all the same. */
export type Swaps = Record<string, number>;
export const ALL_THE_SAME = -1;

/** The session as it is trained: swaps taken stand in, drills ruled out are gone. */
export function withSwaps(session: PhoneSession, swaps: Swaps = {}): PhoneSession {
  return { ...session, drills: session.drills.flatMap((drill) => trainedDrill(drill, swaps) ?? []) };
}

/** What is trained for a planned drill; undefined: nothing. */
export function trainedDrill(drill: PhoneDrill, swaps: Swaps = {}): PhoneDrill | undefined {
  if (!drill.limit?.out) return drill;
  const choice = swaps[drill.key];
  if (choice === undefined) return undefined;
  if (choice === ALL_THE_SAME) return { ...drill, limit: undefined };
  const swap = drill.limit.swaps[choice];
  // A swap that only changes the support is named by it: alone it needs the name of the drill.
  const isSame = swap?.sides[0]?.rungId === drill.sides[0]?.rungId;
  return swap && isSame ? { ...swap, title: `${drill.title}, ${swap.title}` } : swap;
}

/** A swap taken, changed or given back: its sets come in open, the sets of what it replaces go. */
export function changeSwap(
  draft: Draft,
  session: PhoneSession,
  { key, choice }: { key: string; choice: number | null },
): Pick<Draft, 'swaps' | 'sets'> {
  const swaps = { ...draft.swaps };
  if (choice === null) delete swaps[key];
  else swaps[key] = choice;
  const before = plannedSets(withSwaps(session, draft.swaps));
  const after = plannedSets(withSwaps(session, swaps));
  const others = Object.entries(draft.sets).filter(([name]) => !(name in before) && !(name in after));
  const wanted = Object.entries(after).map(([name, open]) => {
    const there = draft.sets[name] ?? [];
    return [name, there.length > 0 ? there : open] as const;
  });
  return { swaps, sets: Object.fromEntries([...others, ...wanted]) };
}

/** Which swaps the sets of a check-in were, for one that is opened again. */
export function swapsTaken(session: PhoneSession | null, sets: readonly HistorySet[]): Swaps {
  const taken: Swaps = {};
  const isDone = (drill: PhoneDrill) =>
    drill.sides.some((side) =>
      sets.some(
        (set) =>
          setKey(set.rungId, set.side) === setKey(side.rungId, side.side) && set.support === drill.support,
      ),
    );
  for (const drill of session?.drills ?? []) {
    if (!drill.limit?.out) continue;
    const swap = drill.limit.swaps.findIndex(isDone);
    if (swap !== -1) taken[drill.key] = swap;
    else if (isDone(drill)) taken[drill.key] = ALL_THE_SAME;
  }
  return taken;
}
