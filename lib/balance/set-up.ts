import { type Body, type HandEnd, PLACED, type Placed, type Point } from './landmarks.ts';

/** A line in the picture that hangs straight: a plumb line, a door frame. Pixels, y runs down. */
export type Plumb = { top: Point; bottom: Point };
export type Scale = { by: 'hand'; metres: number } | { by: 'stature'; metres: number };
/** Metres, x from the heel of the hand towards the fingertips, y up, the heel at 0. */
export type Upright = { body: Body; fingertip: Point; metresPerPixel: number; tilt: number };

/**
 * Ankle to knee to hip to shoulder as a part of stature: 0.246 + 0.245 + 0.288, Drillis and Contini 1966 as printed in
 * Winter 2009, figure 4.1 (the trunk from heights of shoulder 0.818 and hip 0.530).
 */
const CHAIN_OF_STATURE = 0.779;
const CHAIN = ['ankle', 'knee', 'hip', 'shoulder'] as const;

/**
 * Points of a picture as metres on an upright axis. The plumb line says what is upright, the hand or the stature how long
 * a pixel is. Undefined where the plumb line or what gives the scale has no length.
 */
export function setUpright(placed: Placed, plumb: Plumb, scale: Scale): Upright | undefined {
  const down = { x: plumb.bottom.x - plumb.top.x, y: plumb.bottom.y - plumb.top.y };
  const length = Math.hypot(down.x, down.y);
  const pixels = scale.by === 'hand' ? distance(placed.heel, placed.fingertip) : chainOf(placed);
  const known = scale.by === 'hand' ? scale.metres : scale.metres * CHAIN_OF_STATURE;
  if (length === 0 || pixels === 0 || !(known > 0)) return undefined;
  const [ux, uy] = [down.x / length, down.y / length];
  const metresPerPixel = known / pixels;
  // Across the plumb line, to the right of the picture when it hangs straight.
  const across = ({ x, y }: Point) => (x - placed.heel.x) * uy - (y - placed.heel.y) * ux;
  const up = ({ x, y }: Point) => -((x - placed.heel.x) * ux + (y - placed.heel.y) * uy);
  const towards = across(placed.fingertip) < 0 ? -1 : 1;
  const turned = Object.fromEntries(
    PLACED.map((name) => [
      name,
      { x: across(placed[name]) * towards * metresPerPixel, y: up(placed[name]) * metresPerPixel },
    ]),
  ) as Record<keyof Placed, Point>;
  const { heel: _, fingertip, ...body } = turned;
  return { body, fingertip, metresPerPixel, tilt: (Math.atan2(ux, uy) * 180) / Math.PI };
}

/** Turned about the middle of a picture of this width, so that left becomes right. */
export function mirrored<Points extends Partial<Record<keyof Placed | HandEnd, Point>>>(
  points: Points,
  width: number,
): Points {
  return Object.fromEntries(
    Object.entries(points).map(([name, { x, y }]) => [name, { x: width - x, y }]),
  ) as Points;
}

function chainOf(placed: Placed): number {
  let sum = 0;
  for (let at = 1; at < CHAIN.length; at += 1) {
    const [from, to] = [CHAIN[at - 1], CHAIN[at]];
    if (from && to) sum += distance(placed[from], placed[to]);
  }
  return sum;
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
