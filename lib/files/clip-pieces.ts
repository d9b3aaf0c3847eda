import { AppError } from '#lib/errors.ts';
import type { Chunks, FileStore } from './store-types.ts';

/** What comes of a clip is kept in pieces of this size, the last one shorter: a cut line costs at most one. */
export const PIECE_BYTES = 1024 * 1024;

/** Where the checked film of a clip lies. */
export function clipKey(teamId: string, clipId: string): string {
  return `${teamId}/${clipId}.mp4`;
}

function pieceKey(stem: string, at: number): string {
  return `${stem}.${at}.part`;
}

/** Bytes behind the `offset` bytes that are there already; a piece that is begun is filled up. */
export async function writePiece(
  store: FileStore,
  stem: string,
  { offset, bytes }: { offset: number; bytes: Uint8Array },
): Promise<void> {
  const at = Math.floor(offset / PIECE_BYTES);
  const inside = offset % PIECE_BYTES;
  if (inside === 0) return store.write(pieceKey(stem, at), bytes);
  const begun = await store.read(pieceKey(stem, at));
  if (!begun || begun.byteLength < inside) throw new Error('a piece of an upload is gone');
  await store.write(pieceKey(stem, at), Buffer.concat([begun.subarray(0, inside), bytes]));
}

/** All pieces in their order, one in memory at a time. Throws `not-found` where one is gone or short. */
export async function* piecesOf(
  store: FileStore,
  stem: string,
  length: number,
): Chunks & AsyncGenerator<Uint8Array> {
  let rest = length;
  for (let at = 0; rest > 0; at += 1) {
    const piece = await store.read(pieceKey(stem, at));
    const expected = Math.min(PIECE_BYTES, rest);
    if (piece?.byteLength !== expected)
      throw new AppError('not-found', 'It did not arrive whole. Choose it again and send it once more.');
    yield piece;
    rest -= expected;
  }
}
