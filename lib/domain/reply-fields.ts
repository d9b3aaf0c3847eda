const FIELD = /\[([^[\]\n]{1,40})\]/g;
/** The one field that is filled by itself, with the client's own name. */
const NAME = /\[name\]/gi;

/**
 * The names of the fields of a kept reply, such as rung and date in "Stay on [rung] until [date].", each once, in the
 * order of the text. A field is one to forty characters in square brackets on one line; empty without any.
 */
export function replyFields(text: string): string[] {
  return [...new Set([...text.matchAll(FIELD)].map(([, name = '']) => name.trim()))];
}

/** The text with every [name] replaced by the client's name as the team keeps it; all else stays. */
export function withName(text: string, name: string): string {
  return text.replaceAll(NAME, () => name);
}

/** Says which fields are not filled in yet, and what to do; empty when none is left. */
export function unfilledInWords(text: string): string {
  const left = replyFields(text).map((name) => `[${name}]`);
  if (left.length === 0) return '';
  const which =
    left.length === 1 ? `${left[0]} is` : `${left.slice(0, -1).join(', ')} and ${left.at(-1)} are`;
  return `${which} not filled in yet: write over ${left.length === 1 ? 'it' : 'them'}, or take the square brackets away`;
}
