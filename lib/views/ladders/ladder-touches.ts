import type { LadderState } from '#lib/planning/ladders/ladder-state.ts';
import { type FactKind, type LadderPerson, ladderFacts, type RungNames } from './ladder-facts.ts';

/** One way in which an edit touches clients, and whom. */
export type LadderTouch = {
  /** "Tuck: pass mark 4 × 10 s on 2 days → 5 × 10 s on 2 days". */
  words: string;
  clients: { clientId: string; name: string }[];
  kind: FactKind;
};

/**
 * What an edit changes for clients who stand on this ladder or have it planned now: each difference once, with the
 * clients by name. Empty: nobody meets anything else than before.
 */
export function ladderTouches(
  before: LadderState,
  after: LadderState,
  people: readonly LadderPerson[],
  names: RungNames = new Map(),
): LadderTouch[] {
  const touches = new Map<string, LadderTouch>();
  for (const person of people) {
    const was = ladderFacts(before, person, names);
    for (const [key, is] of ladderFacts(after, person, names)) {
      const old = was.get(key);
      if (!old || old.words === is.words) continue;
      const words = `${old.rung}: ${is.what} ${old.words} → ${is.words}`;
      const touch = touches.get(words) ?? { words, clients: [], kind: is.kind };
      touch.clients.push({ clientId: person.clientId, name: person.name });
      touches.set(words, touch);
    }
  }
  return [...touches.values()];
}
