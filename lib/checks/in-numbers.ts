/** To whole numbers; the last bits of a sum never decide what a half is rounded to. */
export function rounded(value: number): number {
  return Math.round(roundTo(value, 6));
}

/** Whole number with a comma between thousands: 12,340. Fixed, not by locale: the same sentence on every machine. */
export function whole(value: number): string {
  return String(rounded(value)).replace(/\B(?=(\d{3})+$)/g, ',');
}

/** For evidence, so that the last bits of a sum never make two equal findings differ. */
export function roundTo(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  return Math.round(value * factor) / factor;
}
