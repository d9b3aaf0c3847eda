import type { Face } from './font-files.ts';

/** What a line may not be broken inside of. */
type Word = { text: string; width: number };
export type Measure = (text: string) => number;
export type Style = { face: Face; size: number; leading: number };

const RIGHT_TO_LEFT = /[\p{Script=Arabic}\p{Script=Hebrew}\p{Script=Syriac}\p{Script=Thaana}]/u;
/** Written without spaces: may break between any two. */
const WITHOUT_SPACES = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]/u;

/** A text in lines of at most `width`. Words are kept whole where they fit; what is longer than a line is cut. */
export function linesOf(text: string, width: number, measure: Measure): string[] {
  return text.split(/\r\n|\r|\n/).flatMap((paragraph) => fill(wordsOf(paragraph, measure), width, measure));
}

function fill(words: readonly Word[], width: number, measure: Measure): string[] {
  const lines: string[] = [];
  let line = '';
  let used = 0;
  for (const word of words) {
    if (line !== '' && used + measure(word.text.trimEnd()) > width) {
      lines.push(line.trimEnd());
      line = '';
      used = 0;
    }
    if (line === '' && word.width > width && measure(word.text.trimEnd()) > width) {
      const pieces = cut(word.text, width, measure);
      lines.push(...pieces.slice(0, -1));
      line = pieces.at(-1) ?? '';
      used = measure(line);
      continue;
    }
    line += word.text;
    used += word.width;
  }
  return [...lines, line.trimEnd()];
}

/** Words with the space behind them. Words written from right to left stay together, so that they keep their order. */
function wordsOf(text: string, measure: Measure): Word[] {
  const pieces: string[] = [];
  for (const piece of text.match(/[^ ]+ *| +/g) ?? []) {
    const last = pieces.at(-1);
    if (last !== undefined && RIGHT_TO_LEFT.test(last) && RIGHT_TO_LEFT.test(piece))
      pieces[pieces.length - 1] = last + piece;
    else if (WITHOUT_SPACES.test(piece))
      pieces.push(
        ...(piece.match(
          /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]\p{M}*|[^\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Thai}]+/gu,
        ) ?? []),
      );
    else pieces.push(piece);
  }
  return pieces.map((piece) => ({ text: piece, width: measure(piece) }));
}

function cut(text: string, width: number, measure: Measure): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of text) {
    if (piece !== '' && measure(piece + letter) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
