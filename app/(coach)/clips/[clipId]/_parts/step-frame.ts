/** Shows the frame of a moment and says where that frame begins, seconds. */
export type ShowFrame = (seconds: number) => Promise<number>;
type Steps = {
  show: ShowFrame;
  /** Where the frame that is shown begins. */
  from: number;
  /** Seconds of the shortest frame that is known of. */
  frame: number;
  /** Frames of this film were seen one after the other, so that `frame` is what it says. */
  isMeasured: boolean;
};

/** Part of a frame that is surely inside of the one before. */
const BACK = 0.4;
/** Past the end of the frame by so much. */
const PAST = 1.1;
/** A gap longer than so many frames may hide one: then it is looked for. */
const WIDE = 1.3;
const MOST_SEEKS = 8;

/** The frame before the one that is shown, never two; the same at the start. */
export async function stepBack({ show, from, frame }: Steps): Promise<number> {
  for (let part = BACK; part < 4; part += BACK) {
    const to = from - frame * part;
    const shown = await show(Math.max(0, to));
    if (shown < from || to <= 0) return shown;
  }
  return from;
}

/**
 * The frame after the one that is shown, never two; the same at the end. Phones film with frames of different lengths: what
 * comes after a wide gap, or before any frame was measured, is looked at from behind until nothing lies between.
 */
export async function stepOn(steps: Steps): Promise<number> {
  const { show, from, frame, isMeasured } = steps;
  let shown = from;
  for (let part = PAST; shown <= from && part < MOST_SEEKS; part += 1)
    shown = await show(from + frame * part);
  if (shown <= from) return from;
  if (isMeasured && shown - from <= frame * WIDE) return shown;
  for (let seek = 0; seek < MOST_SEEKS; seek += 1) {
    const before = await stepBack({ ...steps, from: shown, frame: Math.min(frame, shown - from) });
    if (before <= from) return show(shown + frame / 10);
    shown = before;
  }
  return shown;
}
