/** One line of a stream, or why it has none: longer than the bound. Lines count from 1. */
export type Line = { number: number; bytes: Uint8Array | 'too-long' };

const NEWLINE = 0x0a;

/**
 * Cuts a stream into lines at each newline, holding at most one line. A line over `maxBytes` is not kept: its bytes
 * are let go as they come, and it is given as 'too-long' when it ends. No line is made up after the last newline.
 */
export async function* splitLines(chunks: AsyncIterable<Buffer>, maxBytes: number): AsyncGenerator<Line> {
  let pieces: Buffer[] = [];
  let length = 0;
  let number = 0;
  const keep = (piece: Buffer) => {
    length += piece.length;
    if (length > maxBytes) pieces = [];
    else if (piece.length > 0) pieces.push(piece);
  };
  const finish = (): Line => {
    number += 1;
    const bytes = length > maxBytes ? 'too-long' : Buffer.concat(pieces, length);
    pieces = [];
    length = 0;
    return { number, bytes };
  };
  for await (const chunk of chunks) {
    let from = 0;
    for (let end = chunk.indexOf(NEWLINE); end >= 0; end = chunk.indexOf(NEWLINE, from)) {
      keep(chunk.subarray(from, end));
      from = end + 1;
      yield finish();
    }
    keep(chunk.subarray(from));
  }
  if (length > 0) yield finish();
}
