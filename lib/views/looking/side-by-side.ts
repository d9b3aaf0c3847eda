/** Two moments that belong together, seconds: one of the film looked at, one of the film beside it. */
export type Alignment = { here: number; beside: number };

/** The moment of the film beside that belongs to a moment of the film looked at, inside of its length. */
export function besideAt(here: number, aligned: Alignment, secondsBeside: number): number {
  const at = aligned.beside + here - aligned.here;
  return Math.max(0, Math.min(secondsBeside, at));
}

/** Whether the film beside has run too far from where it belongs to be left alone while both play, seconds. */
export function isApart(here: number, beside: number, aligned: Alignment, secondsBeside: number): boolean {
  return Math.abs(besideAt(here, aligned, secondsBeside) - beside) > APART_SECONDS;
}
/** Own choice: two frames at 25 a second. */
const APART_SECONDS = 0.08;
