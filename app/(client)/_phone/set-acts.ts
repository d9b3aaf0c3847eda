import type { PhoneSession } from '#lib/views/phone-session.ts';
import { type SetDraft, setKey } from './draft.ts';

export type PlannedSet = { target: number; tries: number | null };

export const OPEN_SET: SetDraft = { how: 'open', value: null, tried: null, faults: [] };

/** What the plan asks of each set, by drill side in the order of the sets; a set beyond it was not planned. */
export function plannedOf(session: PhoneSession | null): ReadonlyMap<string, readonly PlannedSet[]> {
  const planned = new Map<string, PlannedSet[]>();
  for (const { rungId, side, sets, target, tries } of session?.drills.flatMap((drill) => drill.sides) ?? []) {
    const key = setKey(rungId, side);
    const asked = Array.from({ length: sets }, () => ({ target, tries }));
    planned.set(key, [...(planned.get(key) ?? []), ...asked]);
  }
  return planned;
}

/**
 * What "same as last set" would put and where: the first open set that has a told one before it takes that one's value
 * and tries, never its faults. A set kept as planned is copied as planned only where the plan asks the same; else the
 * copy is the client's own word. Null: nothing to copy, or nowhere to put it.
 */
export function sameAsLast(
  sets: readonly SetDraft[],
  planned: readonly PlannedSet[] = [],
): { at: number; set: SetDraft } | null {
  let last: SetDraft | null = null;
  for (const [at, set] of sets.entries()) {
    if (set.how === 'open' && last) {
      const isPlanned = last.how === 'as-planned' && planned[at]?.target === last.value;
      const how = isPlanned ? 'as-planned' : 'typed';
      return { at, set: { how, value: last.value, tried: last.tried, faults: [] } };
    }
    if (set.how !== 'open' && set.value !== null) last = set;
  }
  return null;
}

/** Stopped early: what nobody filled in was not done. */
export function restNotDone(sets: readonly SetDraft[]): SetDraft[] {
  return sets.map((set) =>
    set.how === 'open' ? { how: 'not-done', value: null, tried: null, faults: [] } : set,
  );
}

/** Open sets that the plan asks for become as planned; sets beyond the plan stay as they are. */
export function asPlanned(sets: readonly SetDraft[], planned: readonly PlannedSet[] = []): SetDraft[] {
  return sets.map((set, at) => {
    const asked = planned[at];
    if (set.how !== 'open' || !asked) return set;
    return { how: 'as-planned', value: asked.target, tried: asked.tries, faults: [] };
  });
}

/** How many planned sets nobody has said anything about. */
export function countOpen(
  sets: Readonly<Record<string, readonly SetDraft[]>>,
  planned: ReadonlyMap<string, readonly PlannedSet[]>,
): number {
  return Object.entries(sets).reduce((sum, [key, ofSide]) => {
    const asked = planned.get(key)?.length ?? 0;
    return sum + ofSide.filter((set, at) => set.how === 'open' && at < asked).length;
  }, 0);
}
