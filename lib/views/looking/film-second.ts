/** "0:02.4": minutes, seconds and tenths, as a moment of a film is said. */
export function filmSecond(seconds: number): string {
  const tenths = Math.floor(seconds * 10 + 1e-6);
  const minutes = Math.floor(tenths / 600);
  const rest = (tenths % 600) / 10;
  return `${minutes}:${rest.toFixed(1).padStart(4, '0')}`;
}
