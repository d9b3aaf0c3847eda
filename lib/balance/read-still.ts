import { angleAt, type BodyAngles, bodyAngles } from './angles.ts';
import { centreOfMass, shoulderMomentOf } from './centre-of-mass.ts';
import { partOfHand } from './hand-place.ts';
import type { Placed, Point } from './landmarks.ts';
import type { MassModel } from './segment-tables.ts';
import { type Plumb, type Scale, setUpright } from './set-up.ts';

export type Still = {
  placed: Placed;
  plumb: Plumb;
  scale: Scale;
  model: MassModel;
};
export type StillReading = {
  /** Metres from the heel of the hand, x towards the fingertips. */
  centre: Point;
  /** 0 heel, 1 fingertips. */
  partOfHand: number | undefined;
  angles: BodyAngles;
  /** How far each joint lies from the upright line through the wrist, metres, positive towards the fingertips. */
  stack: Record<'shoulder' | 'hip' | 'ankle', number>;
  /** Height of the hip over the shoulder, metres. */
  hipOverShoulder: number;
  /** Lean of the line from wrist to centre of mass, degrees from upright, positive towards the fingertips. */
  lean: number | undefined;
  /** Gravity about the shoulders, both together, in body weight x metres. */
  shoulderMoment: number;
  /** Degrees the picture was turned by to hang straight. */
  tilt: number;
};

/**
 * What a still says, all of it geometry: where the centre of mass is, over what of the hand, angles and lines. Nothing
 * about the person. Undefined where the plumb line, the hand or the scale has no length.
 */
export function readStill({ placed, plumb, scale, model }: Still): StillReading | undefined {
  const upright = setUpright(placed, plumb, scale);
  if (!upright) return undefined;
  const { body, fingertip, tilt } = upright;
  const centre = centreOfMass(body, model);
  const beside = ({ x }: Point) => x - body.wrist.x;
  const above = { x: body.wrist.x, y: body.wrist.y + 1 };
  const lean = angleAt(body.wrist, above, centre);
  return {
    centre,
    partOfHand: partOfHand(centre.x, fingertip.x),
    angles: bodyAngles(body),
    stack: { shoulder: beside(body.shoulder), hip: beside(body.hip), ankle: beside(body.ankle) },
    hipOverShoulder: body.hip.y - body.shoulder.y,
    lean: lean === undefined ? undefined : centre.x < body.wrist.x ? -lean : lean,
    shoulderMoment: shoulderMomentOf(body, model),
    tilt,
  };
}
