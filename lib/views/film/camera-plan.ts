/** Where the camera stands, as it is drawn. */
export type CameraPlan = {
  from: 'side' | 'behind' | 'front';
  /** Own choice, common practice without a source: the whole body fits from three metres, a joint from one and a half. */
  metres: number;
  height: { words: string; metres: number };
  /** The same in words, for who does not see the drawing. */
  words: string;
};

/** Heights over the floor of somebody of usual stature; only where the drawing puts the camera, never a measure. */
const HEIGHTS: readonly (readonly [RegExp, string, number])[] = [
  [/floor height|\blow\b/i, 'at floor height', 0.15],
  [/seat height/i, 'at seat height', 0.45],
  [/elbow height/i, 'at elbow height', 0.6],
  [/shoulder height/i, 'at shoulder height', 1.3],
  [/bar height/i, 'half a metre under the bar', 1.6],
];
const HIP = { words: 'at hip height', metres: 0.9 };
const WHOLE_METRES = 3;
const CLOSE_METRES = 1.5;

/**
 * Distance, height and side of the camera for an angle in words ("from behind, so that …") and what the drill says of the
 * camera. What neither says: from the side, at hip height, far enough for the whole body.
 */
export function cameraPlan(angle: string, camera: string): CameraPlan {
  const from = sideOf(angle) ?? sideOf(camera) ?? 'side';
  const found = HEIGHTS.find(([pattern]) => pattern.test(camera));
  const height = found ? { words: found[1], metres: found[2] } : HIP;
  const metres = /\bclose\b/i.test(camera) ? CLOSE_METRES : WHOLE_METRES;
  const where = { side: 'to your side', behind: 'behind you', front: 'in front of you' }[from];
  const far = metres === WHOLE_METRES ? 'about three metres' : 'about one and a half metres';
  return {
    from,
    metres,
    height,
    words: `Put the phone ${where}, ${far} away, ${height.words}. Lean it on something, so that it stands still.`,
  };
}

function sideOf(text: string): CameraPlan['from'] | undefined {
  const found = /from (the side|behind|the front)/i.exec(text)?.[1]?.toLowerCase();
  if (found === undefined) return undefined;
  return found === 'behind' ? 'behind' : found === 'the front' ? 'front' : 'side';
}
