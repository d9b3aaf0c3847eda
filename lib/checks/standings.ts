import type { Subject } from '#lib/domain/finding.ts';
import type { HistoryPlacement, HistoryRung } from '#lib/domain/history.ts';
import type { Side } from '#lib/domain/vocabulary.ts';
import { newStartAt } from './new-start.ts';
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
  const standings: Standing[] = [];
  const byLadder = placementsByLadder(view);
  for (const ladderId of [...byLadder.keys()].sort()) {
    const placements = byLadder.get(ladderId) ?? [];
    const left = onSide(view, placements, 'left');
    const right = onSide(view, placements, 'right');
    if (left && right && left.rung.id === right.rung.id) {
      const { rung, from } = left.from > right.from ? left : right;
      standings.push({ key: ladderId, rung, side: 'both', from });
      continue;
    }
    if (left) standings.push(left);
    if (right) standings.push(right);
  }
  return standings;
});

/** Those not after the view, newest first. */
function placementsByLadder({ history, asOf }: ClientView): Map<string, HistoryPlacement[]> {
  const byLadder = new Map<string, HistoryPlacement[]>();
  for (const placement of history.placements) {
    if (placement.from > asOf.date) continue;
    const there = byLadder.get(placement.ladderId);
    if (there) there.push(placement);
    else byLadder.set(placement.ladderId, [placement]);
  }
  for (const placements of byLadder.values()) if (placements.length > 1) placements.sort(newestFirst);
  return byLadder;
}

/** The subject of a reason about a ladder and side. */
export function subjectOf({ key, rung, side }: Standing): Subject {
  return { key, label: rungInWords(rung, side), ladderId: rung.ladderId, rungId: rung.id, side };
}

function onSide(
  view: ClientView,
  placements: readonly HistoryPlacement[],
  side: 'left' | 'right',
): Standing | undefined {
  let newest: HistoryPlacement | undefined;
  let placed = '';
  for (const each of placements) {
    if (each.side !== side && each.side !== 'both') continue;
    newest ??= each;
    if (each.rungId !== newest.rungId) break;
    placed = each.from;
  }
  const rung = newest && view.rungs.get(newest.rungId);
  if (!newest || !rung) return undefined;
  // Nobody stands on a rung before joining, nor before coming back as new.
  const start = newStartAt(view);
  const joined = start > 0 ? view.days[start]?.date : view.joinedOn;
  return {
    key: `${newest.ladderId}:${side}`,
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
