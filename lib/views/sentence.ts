export type SentencePart = { text: string; heavy: boolean };

/**
 * Splits a reason's sentence at its ** ** marks. The key number is set heavy, and never breaks from its
 * sign or unit: its spaces become no-break spaces. A mark without its partner is dropped.
 */
export function sentenceParts(sentence: string): SentencePart[] {
  const pieces = sentence.split('**');
  const paired = pieces.length % 2 === 1;
  return pieces
    .map((text, index) => {
      const heavy = index % 2 === 1 && (paired || index < pieces.length - 1);
      return { text: heavy ? text.replaceAll(' ', '\u00a0') : text, heavy };
    })
    .filter((part) => part.text !== '');
}

/** The same sentence without marks, for speech and plain text. */
export function plainSentence(sentence: string): string {
  return sentence.replaceAll('**', '');
}
