import { hipAngleOf, type LeverShape } from './lever-shape.ts';

/** Degrees; thighs on the belly, thighs straight down, heels drawn up. */
const TUCK_HIP = 130;
const ADVANCED_HIP = 90;
const SHINS_FOLDED = -20;

/**
 * The shape that a rung most likely means, as a first guess for a coach to correct: angles that its name says ("hip
 * 90°", "opened to 110°", "straddle, 45° a side"), those of a tuck (130°) or advanced tuck (90°), else the hip angle
 * that its weight stands for. Undefined where
 * neither says anything. The shins of a tuck lie at -20°, heels above the knees, unless the name says level.
 */
export function guessShape(name: string, weight: number | undefined): LeverShape | undefined {
  const said = name.toLowerCase();
  const degrees = /(\d{2,3}(?:\.\d+)?)\s*°/.exec(said)?.[1];
  if (/straddle/.test(said)) {
    return degrees === undefined ? undefined : { hip: 0, shank: 0, straddle: Number(degrees) };
  }
  if (/\bfull\b/.test(said)) return { hip: 0, shank: 0, straddle: 0 };
  if (/one leg/.test(said)) return undefined;
  const advanced = /advanced/.test(said);
  const shank = advanced || /level/.test(said) ? 0 : SHINS_FOLDED;
  if (degrees !== undefined) return { hip: Number(degrees), shank, straddle: 0 };
  if (/\btuck\b/.test(said)) return { hip: advanced ? ADVANCED_HIP : TUCK_HIP, shank, straddle: 0 };
  const hip = weight === undefined ? undefined : hipAngleOf(weight, { shank, straddle: 0 });
  return hip === undefined ? undefined : { hip, shank, straddle: 0 };
}
