/** How far a night got; `later`: of those due, where they live it is not 03:00 yet. */
export type NightCounts = { due: number; done: number; failed: number; later: number };

/** True when everybody was tried whose night has come: what is left follows by itself, zone by zone. */
export function isDoneSoFar({ due, done, failed, later }: NightCounts): boolean {
  return done + failed >= due - later;
}

/** Who follows later, in words without a full stop; "" when nobody does. */
export function laterWords(later: number): string {
  return later === 0 ? '' : `${later} to come at 03:00 where they live`;
}
