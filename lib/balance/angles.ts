import type { Body, Point } from './landmarks.ts';

/** Angle at `at` between two other points, degrees 0-180; undefined when one of them lies on it. */
export function angleAt(at: Point, a: Point, b: Point): number | undefined {
  const [ax, ay, bx, by] = [a.x - at.x, a.y - at.y, b.x - at.x, b.y - at.y];
  if ((ax === 0 && ay === 0) || (bx === 0 && by === 0)) return undefined;
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}

/** Degrees; 180 is straight: the arm in line with the trunk, the legs in line with the trunk. */
export type BodyAngles = Record<'shoulder' | 'hip' | 'elbow' | 'knee', number | undefined>;

export function bodyAngles(body: Body): BodyAngles {
  return {
    shoulder: angleAt(body.shoulder, body.elbow, body.hip),
    hip: angleAt(body.hip, body.shoulder, body.knee),
    elbow: angleAt(body.elbow, body.shoulder, body.wrist),
    knee: angleAt(body.knee, body.hip, body.ankle),
  };
}
