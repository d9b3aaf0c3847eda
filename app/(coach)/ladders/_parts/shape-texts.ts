import type { LeverShape } from '#lib/planning/ladders/lever-shape.ts';
import type { ShapeTexts } from '#lib/views/ladders/split-steps.ts';

/** A shape as the form holds it; empty angles where none is known. */
export function shapeTexts(shape: LeverShape | null | undefined): ShapeTexts {
  if (!shape) return { hip: '', shank: '0', straddle: '0' };
  return { hip: String(shape.hip), shank: String(shape.shank), straddle: String(shape.straddle) };
}
