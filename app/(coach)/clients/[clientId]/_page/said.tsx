import { sentenceParts } from '#lib/views/sentence.ts';

/** A sentence with its key numbers heavy. */
export function Said({ text }: { text: string }) {
  return sentenceParts(text).map((part) =>
    part.heavy ? <strong key={part.text}>{part.text}</strong> : <span key={part.text}>{part.text}</span>,
  );
}
