import { median } from '#lib/stats/median.ts';
import type { Landmark, Placed } from './landmarks.ts';
import { distance } from './set-up.ts';

/**
 * Lengths as parts of stature, Drillis and Contini 1966 as printed in Winter 2009, figure 4.1; the ear lies 0.107 from
 * the shoulder on the line of the trunk, the ball of the foot 0.087 from the ankle (own statics of the same heights).
 */
const LENGTHS: readonly [name: string, from: Landmark, to: Landmark, length: number][] = [
  ['forearm', 'elbow', 'wrist', 0.146],
  ['upper arm', 'shoulder', 'elbow', 0.186],
  ['trunk', 'shoulder', 'hip', 0.288],
  ['thigh', 'hip', 'knee', 0.245],
  ['shank', 'knee', 'ankle', 0.246],
];
/** Own choice: limbs turned towards the camera look shorter; nothing looks half as long again. */
const [SHORTEST, LONGEST] = [0.5, 1.5];

export type ImpossibleJoint = { segment: string; times: number };

/** Segments that are too long or too short beside the others to be where they were placed. */
export function impossibleJoints(placed: Placed): ImpossibleJoint[] {
  const parts = LENGTHS.map(([segment, from, to, length]) => ({
    segment,
    part: distance(placed[from], placed[to]) / length,
  }));
  const usual = median(parts.map(({ part }) => part)) ?? 0;
  if (usual === 0) return parts.map(({ segment }) => ({ segment, times: 0 }));
  return parts.flatMap(({ segment, part }) => {
    const times = part / usual;
    return times < SHORTEST || times > LONGEST ? [{ segment, times }] : [];
  });
}
