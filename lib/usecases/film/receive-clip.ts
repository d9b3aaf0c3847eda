import { randomInt } from 'node:crypto';
import type { Actor } from '#lib/auth/actor.ts';
import { now as clock } from '#lib/clock.ts';
import { withTeamPg } from '#lib/db/client.ts';
import {
  deleteUpload,
  findClipState,
  findUpload,
  finishUpload,
  holdUpload,
  moveUpload,
  type Upload,
} from '#lib/db/clips.ts';
import { AppError } from '#lib/errors.ts';
import { PIECE_BYTES, writePiece } from '#lib/files/clip-pieces.ts';
import { stemOf } from '#lib/files/file-key.ts';
import { fileStore } from '#lib/files/file-store.ts';
import type { Chunks, FileStore } from '#lib/files/store-types.ts';
import { checkClipJob } from '#lib/jobs/check-clip.ts';
import { enqueue } from '#lib/jobs/queue.ts';

/** How long a writer may be silent before another may take the upload over. */
const HOLD_MS = 30_000;
const RENEW_MS = 10_000;

/** Where an own upload stands; anybody else's answers like one that is not there. */
export async function loadUpload(actor: Actor, clipId: string): Promise<Upload> {
  const { clientId } = actor;
  const found = clientId && (await withTeamPg(actor.scope, (tx) => findUpload(tx, { clipId, clientId })));
  if (!found) throw new AppError('not-found', 'This upload is not there. Choose the clip again.');
  return found;
}

/** `busy`: another request adds to it at this moment. `elsewhere`: it stands at another offset. */
export type Received =
  | { kind: 'at'; offset: number }
  | { kind: 'busy' }
  | { kind: 'elsewhere'; offset: number };

/**
 * Adds to an upload as the bytes come, a piece in memory at a time. Where the line is cut, what came is kept and the phone
 * goes on from there. With the last byte the clip waits to be decoded.
 */
export async function receiveClip(
  actor: Actor,
  sent: { clipId: string; offset: number; chunks: Chunks },
): Promise<Received> {
  const known = await loadUpload(actor, sent.clipId);
  if (known.state !== 'arriving')
    return sent.offset === known.length
      ? { kind: 'at', offset: known.length }
      : { kind: 'elsewhere', offset: known.length };
  const at = clock();
  const until = heldUntil(at);
  const hold = { now: at, until, offset: sent.offset };
  const held = await withTeamPg(actor.scope, (tx) => holdUpload(tx, sent.clipId, hold));
  if (!held) {
    const { offset } = await loadUpload(actor, sent.clipId);
    return offset === sent.offset ? { kind: 'busy' } : { kind: 'elsewhere', offset };
  }
  const writer = new Writer(actor, held, until);
  try {
    await writer.take(sent.chunks);
  } finally {
    await writer.end();
  }
  // When the queue is away the row in the outbox waits for the tick.
  if (writer.isWhole)
    await enqueue(checkClipJob, { teamId: actor.scope.teamId, clipId: sent.clipId }).catch(() => undefined);
  return { kind: 'at', offset: writer.offset };
}

/** To the millisecond and a little beside it: no two writers hold an upload until the same moment. */
function heldUntil(at: Date): Date {
  return new Date(at.getTime() + HOLD_MS + randomInt(1000));
}

/** An upload given up by its client: row and pieces are gone. */
export async function dropClip(actor: Actor, clipId: string): Promise<void> {
  const { clientId } = actor;
  const { storageKey } = await loadUpload(actor, clipId);
  const dropped = clientId && (await withTeamPg(actor.scope, (tx) => deleteUpload(tx, { clipId, clientId })));
  if (!dropped)
    throw new AppError(
      'conflict',
      'This clip is here whole. Ask your coach, or ask for deletion under "Your data".',
    );
  await fileStore().removeAll(stemOf(storageKey));
}

/** What comes until the line is cut: a phone that went away is no fault. */
async function* untilCut(chunks: Chunks): AsyncGenerator<Uint8Array> {
  const reading = chunks[Symbol.asyncIterator]();
  for (;;) {
    const next = await reading.next().catch(() => undefined);
    if (!next || next.done) return;
    yield next.value;
  }
}

/** One request that adds to one upload: gathers a piece, keeps it, moves the offset, says that it is alive. */
class Writer {
  offset: number;
  isWhole = false;
  #kept: number;
  #held: Date;
  #gathered: Uint8Array[] = [];
  readonly #actor: Actor;
  readonly #upload: Upload;
  readonly #store: FileStore = fileStore();

  constructor(actor: Actor, upload: Upload, held: Date) {
    this.#actor = actor;
    this.#upload = upload;
    this.#held = held;
    this.offset = upload.offset;
    this.#kept = upload.offset;
  }

  async take(chunks: Chunks): Promise<void> {
    let said = clock().getTime();
    for await (const chunk of untilCut(chunks)) {
      if (this.offset + chunk.byteLength > this.#upload.length) {
        this.#gathered = [];
        throw new AppError('too-large', 'More bytes came than were announced. Choose the clip again.');
      }
      for (let rest = chunk; rest.byteLength > 0; ) {
        const room = PIECE_BYTES - (this.offset % PIECE_BYTES);
        const fits = rest.subarray(0, room);
        this.#gathered.push(fits);
        this.offset += fits.byteLength;
        if (fits.byteLength === room) await this.#keep(true);
        rest = rest.subarray(fits.byteLength);
      }
      if (clock().getTime() - said < RENEW_MS) continue;
      await this.#move(this.#kept, true);
      said = clock().getTime();
    }
  }

  /** Whatever came is kept, and the upload is let go. */
  async end(): Promise<void> {
    if (!this.isWhole) await this.#keep(false);
  }

  async #keep(on: boolean): Promise<void> {
    const bytes = Buffer.concat(this.#gathered);
    this.#gathered = [];
    if (bytes.byteLength > 0) {
      // A line that was silent may have lost the upload: nothing is written over what its new writer wrote.
      if (clock().getTime() > this.#held.getTime() - RENEW_MS) await this.#move(this.#kept, true);
      await writePiece(this.#store, stemOf(this.#upload.storageKey), { offset: this.#kept, bytes });
    }
    await this.#move(this.#kept + bytes.byteLength, on);
  }

  /** Where it stands now; with the last byte it waits to be decoded, at once. */
  async #move(to: number, on: boolean): Promise<void> {
    const { id, length } = this.#upload;
    const at = clock();
    const until = on ? heldUntil(at) : null;
    const move = { held: this.#held, from: this.#kept, to, until, at };
    const isHeld = await withTeamPg(this.#actor.scope, async (tx) => {
      const isMoved = await moveUpload(tx, id, move);
      if (isMoved && to === length) await finishUpload(tx, id, at);
      return isMoved;
    });
    if (!isHeld) return this.#lost();
    this.#kept = to;
    this.isWhole = to === length;
    if (until) this.#held = until;
  }

  /** Another request goes on with it; or it was given up, and what was written since goes as well. */
  async #lost(): Promise<never> {
    const state = await withTeamPg(this.#actor.scope, (tx) => findClipState(tx, this.#upload.id));
    if (state === undefined) await this.#store.removeAll(stemOf(this.#upload.storageKey));
    throw new AppError(
      'conflict',
      'Another request goes on with this upload. Ask where it stands and go on from there.',
    );
  }
}
