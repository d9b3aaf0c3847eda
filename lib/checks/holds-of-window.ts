import type { HistoryRung } from '#lib/domain/history.ts';
import { type RungDay, rungDays } from './rung-days.ts';
import { hasResult } from './set-result.ts';
import type { ClientView } from './types.ts';

/** The two parts of the starter library that train the two edges of the balance window. */
const PARTS = { over: 'Over-balance', under: 'Under-balance' } as const;

/** Rungs of one kind: the name without the ladder's own ("short holds", "hands further out"); both edges have it. */
export type KindOfHold = { name: string; over: HistoryRung[]; under: HistoryRung[] };

/** Kinds of hold whose both edges the client has, in the order of their names. */
export function kindsOfHold(view: ClientView): KindOfHold[] {
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

/** Training days on some rungs, rung after rung. */
export function daysOn(view: ClientView, rungs: readonly HistoryRung[]): RungDay[] {
  return rungs.flatMap((rung) => rungDays(view, rung.id));
}

/** Best clean hold of each day that counts, on these rungs, s. */
export function bestHolds(days: readonly RungDay[], rungs: readonly HistoryRung[]): number[] {
  const best = new Map<string, number>();
  for (const day of days.filter((each) => each.counts)) {
    for (const set of day.sets.filter(hasResult)) {
      if (set.clean && rungs.some((rung) => rung.id === set.rungId))
        best.set(day.date, Math.max(set.value, best.get(day.date) ?? 0));
    }
  }
  return [...best.values()];
}
