import type { SetDraft } from './draft.ts';

const SECOND_MS = 1_000;
/** Shorter than this is a slip of the finger, not a hold: seconds (own choice). */
const SHORTEST_HOLD_S = 1;

/** "0:45", "1:05": seconds as a clock that counts down. */
export function clockOf(seconds: number): string {
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

/** Where a hold stands so many ms after the tap: whole seconds until it begins, then whole seconds held. */
export function holdAt(elapsedMs: number, countdownS: number): { ready: number; seconds: number } {
  const held = elapsedMs - countdownS * SECOND_MS;
  if (held < 0) return { ready: Math.ceil(-held / SECOND_MS), seconds: 0 };
  return { ready: 0, seconds: Math.floor(held / SECOND_MS) };
}

/** What lands in the set when it is stopped; null: it had hardly begun. */
export function timedHold(elapsedMs: number, countdownS: number): number | null {
  const { ready, seconds } = holdAt(elapsedMs, countdownS);
  return ready > 0 || seconds < SHORTEST_HOLD_S ? null : seconds;
}

/** Whole seconds of rest that are left, 0 when it is over. */
export function restLeft(endsAt: number, now: number): number {
  return Math.max(0, Math.ceil((endsAt - now) / SECOND_MS));
}

/** A set that was done just now is followed by rest; one that was put right, or not done, is not. */
export function beginsRest(before: SetDraft | undefined, after: SetDraft): boolean {
  return before?.how === 'open' && after.how !== 'open' && after.how !== 'not-done';
}
