/** Points placed on a still, left and right laid over each other as a view from the side shows them. */
export const LANDMARKS = ['ear', 'shoulder', 'elbow', 'wrist', 'hip', 'knee', 'ankle', 'toe'] as const;
export type Landmark = (typeof LANDMARKS)[number];

/** Both ends of the hand on the floor: where the palm begins, and where the fingers end. */
export const HAND_ENDS = ['heel', 'fingertip'] as const;
export type HandEnd = (typeof HAND_ENDS)[number];

export type Point = { x: number; y: number };
export type Body = Record<Landmark, Point>;
/** `toe` is the head of the metatarsals, `ear` the ear canal. */
export type Placed = Record<Landmark | HandEnd, Point>;

export const PLACED = [...LANDMARKS, ...HAND_ENDS] as const;
