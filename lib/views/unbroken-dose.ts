/** A line whose doses ("5 × 4 s") do not break at the sign, for narrow screens. */
export function unbrokenDose(line: string): string {
  return line.replaceAll(' × ', '\u00a0×\u00a0');
}
