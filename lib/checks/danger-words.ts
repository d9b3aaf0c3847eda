/**
 * Words of the danger signs as people write them; a question that holds one is counted round the clock. A short list,
 * common practice, no source: it misses other words and other languages, so nothing may rest on its silence.
 */
const DANGER_WORDS =
  /\b(numb\w*|tingl\w*|pins and needles|weakness|dropp(?:ed|ing) things|swoll\w*|swell\w*|popp?(?:ed|ing)?|faint\w*|passed out|black(?:ed)? out|dizz\w*|chest pain|breathless\w*|can'?t breathe|double vision|can'?t see|flash(?:es|ing)|floaters|curtain|worst headache|fever|blue (?:arm|hand)|(?:arm|hand) (?:is |went )?blue|pain at (?:night|rest)|wakes? me)\b/i;

/** Where the words of danger signs stand in a text, in its order; empty when it holds none. */
export function findDangerWords(text: string): { start: number; end: number }[] {
  const plain = text.replaceAll('’', "'");
  return [...plain.matchAll(new RegExp(DANGER_WORDS.source, 'gi'))].map((found) => ({
    start: found.index,
    end: found.index + found[0].length,
  }));
}

/** True when a text holds a word of a danger sign. */
export function hasDangerWords(text: string): boolean {
  return DANGER_WORDS.test(text.replaceAll('’', "'"));
}
