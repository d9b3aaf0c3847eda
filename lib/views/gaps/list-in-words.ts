/** "a", "a and b", "a, b and c". Each only once. */
export function listInWords(items: readonly string[]): string {
  const each = [...new Set(items)];
  if (each.length <= 1) return each.join('');
  return `${each.slice(0, -1).join(', ')} and ${each.at(-1)}`;
}
