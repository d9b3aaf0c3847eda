/** A planche or lever with the trunk level. Degrees: hip 0 straight, 90 thigh straight down; shank 0 level, negative heels above the knees; straddle 0 legs together. */
export type LeverShape = { hip: number; shank: number; straddle: number };

const TRUNK = 0.15564;
const THIGH = 0.05111;
const SHANK = 0.0183;
const FULL = TRUNK + THIGH + SHANK;
const DEGREES_OF_HALF_A_TURN = 180;

/**
 * How much gravity turns the shoulder, in body weight x height, both shoulders together: 0.1400 in the tuck (hip 130,
 * shank -20), 0.2250 in the full position. Own statics: rigid body, trunk level, straight arms, masses of Winter 2009
 * (table 4.1), lengths of Drillis & Contini 1966. Not modelled: a rounded back, the shape of the shoulder blades.
 */
export function shoulderMoment({ hip, shank, straddle }: LeverShape): number {
  return TRUNK + (THIGH * cosine(hip) + SHANK * cosine(shank)) * cosine(straddle);
}

/** The same as a part of the full position, 0-1: what the library keeps as the weight of the tissue. */
export function partOfFullMoment(shape: LeverShape): number {
  return shoulderMoment(shape) / FULL;
}

/**
 * The hip angle in whole degrees at which the moment is this part of the full position, with shank and straddle as
 * given. Undefined where no angle from 0 to 150 gives it.
 */
export function hipAngleOf(part: number, { shank, straddle }: Omit<LeverShape, 'hip'>): number | undefined {
  const wide = cosine(straddle);
  if (wide <= 0) return undefined;
  const cosineOfHip = ((part * FULL - TRUNK) / wide - SHANK * cosine(shank)) / THIGH;
  if (cosineOfHip > 1 || cosineOfHip < cosine(WIDEST_HIP)) return undefined;
  return Math.round((Math.acos(cosineOfHip) * DEGREES_OF_HALF_A_TURN) / Math.PI);
}

/** Degrees; thighs on the chest. */
const WIDEST_HIP = 150;

function cosine(degrees: number): number {
  return Math.cos((degrees * Math.PI) / DEGREES_OF_HALF_A_TURN);
}
