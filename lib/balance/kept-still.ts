import type { Placed } from './landmarks.ts';
import type { MassModel } from './segment-tables.ts';
import type { Plumb, Scale } from './set-up.ts';

/** Joints that were placed on a still and kept, in pixels of the still. */
export type KeptStill = {
  id: string;
  stillId: string;
  placed: Placed;
  /** The same placed once more. */
  second: Placed | null;
  plumb: Plumb;
  scale: Scale;
  model: MassModel;
  at: Date;
};
