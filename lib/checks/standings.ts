import type { Subject } from '#lib/domain/finding.ts';
import type { HistoryPlacement, HistoryRung } from '#lib/domain/history.ts';
import { localDateOf } from '#lib/domain/local-date.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { oncePerView } from './once-per-view.ts';
import type { ClientView } from './types.ts';
import { rungInWords } from './words.ts';

/** Where a client stands on a ladder now; one for both sides when both stand on the same rung. */
export type Standing = {
  /** Stable over rungs: the ladder, and the side where the sides stand apart. */
  key: string;
  rung: HistoryRung;
  side: Side;
  /** On this rung since; the later of both sides. Not before the client joined. */
  from: string;
};

/** Rungs the client stands on, in order of ladder and side. Placements on rungs the history does not carry are left out. */
export const standingsOf: (view: ClientView) => readonly Standing[] = oncePerView((view) => {
  const ladders = [...new Set(view.standing.map((placement) => placement.ladderId))].sort();
  return ladders.flatMap((ladderId) => {
    const left = onSide(view, ladderId, 'left');
    const right = onSide(view, ladderId, 'right');
    if (!left || !right) return [left ?? right].flatMap((each) => (each ? [each] : []));
    if (left.rung.id !== right.rung.id) return [left, right];
    const later = left.from > right.from ? left : right;
    return [{ ...later, key: ladderId, side: 'both' }];
  });
});

/** The subject of a reason about a ladder and side. */
export function subjectOf({ key, rung, side }: Standing): Subject {
  return { key, label: rungInWords(rung, side), ladderId: rung.ladderId, rungId: rung.id, side };
}

/** In the client's own zone; nobody stands on a rung before. */
const joinedOn = oncePerView(({ history: { client } }: ClientView): { date: string | undefined } => ({
  date: client.joinedAt === null ? undefined : localDateOf(new Date(client.joinedAt), client.zone),
}));

function onSide(view: ClientView, ladderId: string, side: 'left' | 'right'): Standing | undefined {
  const placements = view.history.placements
    .filter((each) => each.ladderId === ladderId && (each.side === side || each.side === 'both'))
    .filter((each) => each.from <= view.asOf.date)
    .sort(newestFirst);
  const newest = placements[0];
  const rung = newest && view.rungs.get(newest.rungId);
  if (!newest || !rung) return undefined;
  const firstOther = placements.findIndex((each) => each.rungId !== newest.rungId);
  const run = firstOther === -1 ? placements : placements.slice(0, firstOther);
  const placed = run.at(-1)?.from ?? newest.from;
  const joined = joinedOn(view).date;
  return {
    key: `${ladderId}:${side}`,
    rung,
    side,
    from: joined !== undefined && joined > placed ? joined : placed,
  };
}

/** Of two on one day the one for a single side is the more exact. */
function newestFirst(a: HistoryPlacement, b: HistoryPlacement): number {
  if (a.from !== b.from) return a.from < b.from ? 1 : -1;
  if (a.side !== b.side) return a.side === 'both' ? 1 : -1;
  return a.rungId < b.rungId ? 1 : -1;
}
