import { angleAt } from './angles.ts';
import type { Point } from './landmarks.ts';
import type { Plumb } from './set-up.ts';
import { FIRST_SPREAD } from './still-errors.ts';

/** Three points drawn over a picture: the angle stands at `at`. Pixels, y runs down. */
export type Angle = { at: Point; a: Point; b: Point };
/** Degrees in the picture, and the standard deviation that placing brings. */
export type Drawn = { degrees: number; error: number };
/** Two hands on the ground seen from the front: the one that carries and the one that helps. Pixels. */
export type Hands = { carrying: Point; helping: Point };
/** Part of the weight, 0 to 1 between the hands, and the standard deviation that placing brings. */
export type Helped = { part: number; error: number };

/** Of a picture some 800 pixels high, as on a still: own choice. */
const HEIGHT_OF_SPREAD = 800;

/** How well a point is placed by hand in a picture of this height, standard deviation in pixels. */
export function placingSpread(height: number): number {
  return (FIRST_SPREAD * height) / HEIGHT_OF_SPREAD;
}

/**
 * The angle of three points in the picture, 0-180 degrees; each point is moved by `spread` on both axes and the changes are
 * added up as squares. Of the picture: a limb that turns to or from the camera looks at another angle than it has.
 * Undefined when a point lies on the middle one.
 */
export function drawnAngle(angle: Angle, spread: number): Drawn | undefined {
  const degrees = degreesOf(angle);
  if (degrees === undefined) return undefined;
  let squares = 0;
  for (const point of ['at', 'a', 'b'] as const) {
    for (const axis of ['x', 'y'] as const) {
      const moved = { ...angle, [point]: { ...angle[point], [axis]: angle[point][axis] + spread } };
      squares += ((degreesOf(moved) ?? degrees) - degrees) ** 2;
    }
  }
  return { degrees, error: Math.sqrt(squares) };
}

/**
 * How far a line leans from the upright of the picture, degrees, positive to the right of the picture at its top; the error
 * is that of placing both ends. Undefined without a length.
 */
export function leanOfLine({ top, bottom }: Plumb, spread: number): Drawn | undefined {
  const [across, down] = [top.x - bottom.x, bottom.y - top.y];
  const length = Math.hypot(across, down);
  if (length === 0) return undefined;
  const toDegrees = 180 / Math.PI;
  return {
    degrees: Math.atan2(across, down) * toDegrees,
    error: ((spread * Math.SQRT2) / length) * toDegrees,
  };
}

/**
 * Part of the weight on the helping hand while the centre of mass stands over `centreX`: its way from the carrying hand over
 * the distance of the two (statics of two supports at rest). Under 0 or over 1 it is beside both. Each point is placed
 * within `spread` along the ground. Undefined where both hands stand in one place.
 */
export function helpedPart(
  { carrying, helping }: Hands,
  centreX: number,
  spread: number,
): Helped | undefined {
  const apart = helping.x - carrying.x;
  if (apart === 0) return undefined;
  const part = (centreX - carrying.x) / apart;
  return { part, error: Math.hypot(1, 1 - part, part) * (spread / Math.abs(apart)) };
}

function degreesOf({ at, a, b }: Angle): number | undefined {
  return angleAt(at, a, b);
}
