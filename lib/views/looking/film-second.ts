/** "0:02.4": minutes, seconds and tenths, as a moment of a film is said. */
export function filmSecond(seconds: number): string {
  const tenths = Math.floor(seconds * 10 + 1e-6);
  const minutes = Math.floor(tenths / 600);
  const rest = (tenths % 600) / 10;
  return `${minutes}:${rest.toFixed(1).padStart(4, '0')}`;
}

/** Browsers say where a frame begins cut off to the microsecond: sought as it is, the frame before may be shown. */
const JUST_INSIDE = 0.001;

/** Where to seek for the frame that begins at a moment, seconds. */
export function insideFrame(begins: number): number {
  return begins + JUST_INSIDE;
}
