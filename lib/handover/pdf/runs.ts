import { FACES, FALLBACKS, type Face, type FontName } from './font-files.ts';

/** Letters of one font that stand together. */
export type Run = { font: FontName; text: string };
export type HasLetter = (font: FontName, codePoint: number) => boolean;

const MISSING = '\u25A1';
const DIRECTION_SIGNS = /[\u200E\u200F\u061C\u202A-\u202E\u2066-\u2069]/gu;
/** Marks, joiners and selectors go with the letter before them, spaces with the run before them. */
const CLINGS = /[\p{M}\p{Cf}\p{Zs}]/u;

/**
 * A text in runs of fonts that have its letters. A letter that no font has becomes a box and is told to `onMissing`;
 * signs that only turn the writing around are left out, so that nobody's name can reorder a line.
 */
export function runsOf(text: string, face: Face, has: HasLetter, onMissing: (letter: string) => void): Run[] {
  const runs: Run[] = [];
  for (const letter of text.replace(DIRECTION_SIGNS, '').replace(/\p{Cc}/gu, ' ')) {
    const last = runs.at(-1);
    const code = letter.codePointAt(0) ?? 0;
    if (last && CLINGS.test(letter)) {
      if (has(last.font, code)) last.text += letter;
      else if (/\p{Zs}/u.test(letter)) last.text += ' ';
      continue;
    }
    const font = fontFor(face, code, has);
    if (font === undefined) onMissing(letter);
    const shown = font === undefined ? MISSING : letter;
    const taken = font ?? 'dejavu';
    if (last?.font === taken) last.text += shown;
    else runs.push({ font: taken, text: shown });
  }
  return runs;
}

function fontFor(face: Face, code: number, has: HasLetter): FontName | undefined {
  if (has(face, code)) return face;
  return (Object.keys(FALLBACKS) as (keyof typeof FALLBACKS)[]).find((font) => has(font, code));
}

export function pathOf(font: FontName): string {
  return font in FACES ? FACES[font as Face] : FALLBACKS[font as keyof typeof FALLBACKS];
}
