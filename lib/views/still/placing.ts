import { PLACED, type Placed, type Point } from '#lib/balance/landmarks.ts';
import { mirrored, type Plumb } from '#lib/balance/set-up.ts';

const PLUMB_ENDS = ['plumb top', 'plumb bottom'] as const;
/** In the order in which they are placed: from the floor up. */
export const SPOTS = [
  'heel',
  'fingertip',
  'wrist',
  'elbow',
  'shoulder',
  'ear',
  'hip',
  'knee',
  'ankle',
  'toe',
  ...PLUMB_ENDS,
] as const;
export type Spot = (typeof SPOTS)[number];

export const SPOT_LABELS: Record<Spot, string> = {
  heel: 'heel of the hand',
  fingertip: 'tip of the longest finger',
  wrist: 'wrist',
  elbow: 'elbow',
  shoulder: 'shoulder',
  ear: 'ear',
  hip: 'hip, at the bone on its side',
  knee: 'knee',
  ankle: 'ankle, outside',
  toe: 'ball of the foot',
  'plumb top': 'top of the plumb line',
  'plumb bottom': 'bottom of the plumb line',
};

/** What is drawn between the points. */
export const BONES: readonly (readonly [keyof Placed, keyof Placed])[] = [
  ['heel', 'fingertip'],
  ['wrist', 'elbow'],
  ['elbow', 'shoulder'],
  ['shoulder', 'ear'],
  ['shoulder', 'hip'],
  ['hip', 'knee'],
  ['knee', 'ankle'],
  ['ankle', 'toe'],
];

export type Placing = { placed: Placed; plumb: Plumb; chosen: Spot };
export type Size = { width: number; height: number };

/** A straight handstand in the middle of the picture, to be moved: parts of stature, hand at the bottom. */
const FIRST: Record<keyof Placed, readonly [beside: number, up: number]> = {
  heel: [-0.03, 0],
  fingertip: [0.08, 0],
  wrist: [0, 0.02],
  elbow: [0, 0.166],
  shoulder: [0, 0.352],
  ear: [0.02, 0.245],
  hip: [0, 0.64],
  knee: [0, 0.885],
  ankle: [0, 1.131],
  toe: [0, 1.218],
};
const TALL = 1.218;

/** Where the points stand before anybody has placed them. */
export function firstPlacing({ width, height }: Size): Placing {
  const stature = (height * 0.8) / TALL;
  const bottom = height * 0.9;
  const placed = Object.fromEntries(
    PLACED.map((name) => {
      const [beside, up] = FIRST[name];
      return [name, { x: Math.round(width / 2 + beside * stature), y: Math.round(bottom - up * stature) }];
    }),
  ) as Placed;
  const x = Math.round(width * 0.15);
  const plumb = { top: { x, y: Math.round(height * 0.1) }, bottom: { x, y: Math.round(height * 0.9) } };
  return { placed, plumb, chosen: 'heel' };
}

export function spotAt({ placed, plumb }: Placing, spot: Spot): Point {
  if (spot === 'plumb top') return plumb.top;
  return spot === 'plumb bottom' ? plumb.bottom : placed[spot];
}

/** The chosen point somewhere else, kept inside the picture. */
export function movedTo(placing: Placing, spot: Spot, to: Point, size: Size): Placing {
  const at = { x: within(to.x, size.width), y: within(to.y, size.height) };
  if (spot === 'plumb top') return { ...placing, plumb: { ...placing.plumb, top: at } };
  if (spot === 'plumb bottom') return { ...placing, plumb: { ...placing.plumb, bottom: at } };
  return { ...placing, placed: { ...placing.placed, [spot]: at } };
}

/** The upright through the wrist, as the plumb line says what is upright, as long as the picture is high: the line to stack on. */
export function uprightThrough({ placed, plumb }: Placing, { height }: Size): Plumb {
  const [across, down] = [plumb.bottom.x - plumb.top.x, plumb.bottom.y - plumb.top.y];
  const length = Math.hypot(across, down);
  const { wrist } = placed;
  if (length === 0) return { top: wrist, bottom: wrist };
  const along = (by: number) => ({ x: wrist.x + (across / length) * by, y: wrist.y + (down / length) * by });
  return { top: along(-height), bottom: along(height) };
}

export function nextSpot(spot: Spot, by: 1 | -1): Spot {
  const at = (SPOTS.indexOf(spot) + by + SPOTS.length) % SPOTS.length;
  return SPOTS[at] ?? spot;
}

/** All points of the body turned over, left to right: for somebody who faces the other way. The plumb line stays. */
export function turnedOver(placing: Placing, { width }: Size): Placing {
  return { ...placing, placed: mirrored(placing.placed, width) };
}

function within(value: number, most: number): number {
  return Math.round(Math.max(0, Math.min(most, value)) * 10) / 10;
}
