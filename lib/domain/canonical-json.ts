/**
 * One text for one meaning: keys in order, and what says nothing (null, false, "", empty lists) left out, so that a
 * field that a later version adds with such a default does not change the text of an earlier body.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value ?? null);
  const entries = Object.entries(value)
    .filter(([, inner]) => !saysNothing(inner))
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([key, inner]) => `${JSON.stringify(key)}:${canonicalJson(inner)}`);
  return `{${entries.join(',')}}`;
}

function saysNothing(value: unknown): boolean {
  return (
    value === null ||
    value === undefined ||
    value === false ||
    value === '' ||
    (Array.isArray(value) && value.length === 0)
  );
}
