/** Part of the way from the heel of the hand (0) to the fingertips (1). Own choice, to be set for each client. */
export const DEFAULT_BAND = { from: 0.25, to: 0.6 } as const;
export type Band = { from: number; to: number };

/** Where a centre of mass stands over the hand. */
export type HandPlace =
  | 'behind-the-heel'
  | 'under-balance'
  | 'over-the-hand'
  | 'over-balance'
  | 'past-the-fingers';

/**
 * Part of the hand that the centre of mass has reached, 0 at its heel and 1 at the fingertips; under 0 and over 1 it is
 * beside the hand. Undefined for a hand without length along the floor.
 */
export function partOfHand(centreX: number, fingertipX: number): number | undefined {
  return fingertipX > 0 ? centreX / fingertipX : undefined;
}

/** Towards the fingertips is over-balance, towards the heel under-balance. */
export function handPlace(part: number, band: Band = DEFAULT_BAND): HandPlace {
  if (part < 0) return 'behind-the-heel';
  if (part > 1) return 'past-the-fingers';
  if (part < band.from) return 'under-balance';
  return part > band.to ? 'over-balance' : 'over-the-hand';
}
