import { DEFAULT_BAND, type HandPlace, handPlace } from '#lib/balance/hand-place.ts';
import type { ImpossibleJoint } from '#lib/balance/impossible-joints.ts';
import type { StillReading } from '#lib/balance/read-still.ts';
import { type StillErrors, toErrorPlace } from '#lib/balance/still-errors.ts';
import { shoulderMoment } from '#lib/planning/ladders/lever-shape.ts';

/** One figure of a still, as it is said: no more places than its error allows. */
export type StillLine = { name: string; value: string; error: string; means: string };

const PLACES: Record<HandPlace, string> = {
  'behind-the-heel': 'behind the heel of the hand: it falls back unless something pulls',
  'under-balance': 'near the heel of the hand: under-balance',
  'over-the-hand': 'over the middle of the hand',
  'over-balance': 'near the fingertips: over-balance, held by the fingers',
  'past-the-fingers': 'past the fingertips: it falls over unless something pulls',
};
const SHARE = 100;
const CM = 100;

/** What the geometry says, line by line. `stature` in metres where it gave the scale: moments are then said of it. */
export function stillLines(reading: StillReading, errors: StillErrors, stature: number | null): StillLine[] {
  const { partOfHand, angles, stack, shoulderMoment: moment } = reading;
  const lines: StillLine[] = [];
  if (partOfHand !== undefined) {
    const sure =
      Math.min(Math.abs(partOfHand - DEFAULT_BAND.from), Math.abs(partOfHand - DEFAULT_BAND.to)) >
      errors.partOfHand;
    lines.push({
      name: 'centre of mass over the hand',
      ...said(partOfHand * SHARE, errors.partOfHand * SHARE, '% of the way from heel to fingertips'),
      means: sure ? PLACES[handPlace(partOfHand)] : 'too near an edge to say on which side, as it was placed',
    });
  }
  const angle = (name: string, value: number | undefined, error: number, means: string) => {
    if (value !== undefined) lines.push({ name, ...said(value, error, '°'), means });
  };
  angle('shoulder', angles.shoulder, errors.shoulderAngle, '180 is the arm in line with the trunk');
  angle('hip', angles.hip, errors.hipAngle, '180 is the thigh in line with the trunk');
  angle('elbow', angles.elbow, errors.elbowAngle, '180 is straight');
  angle('knee', angles.knee, errors.kneeAngle, '180 is straight');
  const beside = (name: string, value: number, error: number) =>
    void lines.push({
      name,
      ...said(value * CM, error * CM, 'cm'),
      means: 'beside the upright through the wrist, plus towards the fingertips',
    });
  beside('shoulder from the line', stack.shoulder, errors.stackShoulder);
  beside('hip from the line', stack.hip, errors.stackHip);
  beside('ankle from the line', stack.ankle, errors.stackAnkle);
  lines.push({
    name: 'hip over the shoulder',
    ...said(reading.hipOverShoulder * CM, errors.hipOverShoulder * CM, 'cm'),
    means: 'height of the hip less height of the shoulder',
  });
  if (stature !== null && stature > 0) {
    const full = shoulderMoment({ hip: 0, shank: 0, straddle: 0 });
    lines.push({
      name: 'gravity about the shoulders',
      ...said(
        (Math.abs(moment) / stature / full) * SHARE,
        (errors.shoulderMoment / stature / full) * SHARE,
        '% of a full planche',
      ),
      means: 'trunk taken as rigid; arms left out',
    });
  }
  return lines;
}

/** What stands in the way of reading the figures. */
export function impossibleInWords(joints: readonly ImpossibleJoint[]): string | null {
  if (joints.length === 0) return null;
  const told = joints.map(({ segment, times }) => `${segment} ${times > 1 ? 'too long' : 'too short'}`);
  return `These joints cannot be right beside the others: ${told.join(', ')}. Move them before you read the figures.`;
}

function said(value: number, error: number, unit: string): Pick<StillLine, 'value' | 'error'> {
  const gap = unit === '°' ? '' : ' ';
  return {
    value: `${toErrorPlace(value, error)}${gap}${unit}`,
    error: error > 0 ? `± ${toErrorPlace(error, error)}` : 'not known',
  };
}
