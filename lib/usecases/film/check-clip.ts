import { createReadStream } from 'node:fs';
import { open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { insertAudit } from '#lib/db/audit.ts';
import { withTeamPg } from '#lib/db/client.ts';
import { type ClipToCheck, findClipState, findClipToCheck, readyClip, refuseClip } from '#lib/db/clips.ts';
import { ledgerScope } from '#lib/db/ledger.ts';
import { closeClipChecks, noteClipFailure } from '#lib/db/outbox-clips.ts';
import { AppError } from '#lib/errors.ts';
import { clipKey, piecesOf } from '#lib/files/clip-pieces.ts';
import { stemOf } from '#lib/files/file-key.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { lookThrough, type Verdict } from '#lib/files/video/look-through.ts';
import { makeWorkFolder } from '#lib/files/video/work-folder.ts';
import { errorInWords } from '../error-in-words.ts';

const SYSTEM = { userId: null, role: 'system' } as const;

/**
 * The job after an upload: puts the pieces together in a file of the worker's own, decodes it, and keeps what is written
 * anew, or says why not. The pieces go when it is decided. Safe to run twice and to be killed: a clip that is decided stays as it is, and what was left of it is removed.
 */
export async function checkClip(job: { teamId: string; clipId: string }, now: Date): Promise<void> {
  const scope = ledgerScope(job.teamId);
  const clip = await withTeamPg(scope, (tx) => findClipToCheck(tx, job.clipId));
  if (!clip) {
    await removeLeft(job);
    return withTeamPg(scope, (tx) => closeClipChecks(tx, job.clipId, now));
  }
  const folder = await makeWorkFolder();
  try {
    const verdict = await lookAt(clip, folder);
    await withTeamPg(scope, async (tx) => {
      const { id: objectId, clientId } = clip;
      const isNews = verdict.taken
        ? await readyClip(tx, objectId, verdict.film)
        : await refuseClip(tx, objectId, verdict.why);
      if (isNews) {
        const action = verdict.taken ? 'clip-taken' : 'clip-refused';
        await insertAudit(tx, SYSTEM, { action, clientId, objectId, fields: [] });
      }
      await closeClipChecks(tx, objectId, now);
    });
    await removeLeft(job);
  } catch (error) {
    await withTeamPg(scope, (tx) => noteClipFailure(tx, job.clipId, errorInWords(error))).catch(
      () => undefined,
    );
    throw error;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function lookAt(clip: ClipToCheck, folder: string): Promise<Verdict> {
  const store = fileStore();
  const [input, output] = [join(folder, 'in'), join(folder, 'out')];
  const file = await open(input, 'wx', 0o600);
  try {
    for await (const piece of piecesOf(store, stemOf(clip.storageKey), clip.length))
      await file.writeFile(piece);
  } catch (error) {
    if (error instanceof AppError) return { taken: false, why: error.message }; // a piece is gone for good
    throw error;
  } finally {
    await file.close();
  }
  const verdict = await lookThrough({ input, output }, { sound: clip.sound });
  // Before the row says so: a clip that is ready has its file.
  if (verdict.taken) await store.writeFrom(clip.storageKey, createReadStream(output));
  return verdict;
}

/** The kept file alone stays; nothing of what was refused, or of a clip that went with its client meanwhile. */
async function removeLeft({ teamId, clipId }: { teamId: string; clipId: string }): Promise<void> {
  const state = await withTeamPg(ledgerScope(teamId), (tx) => findClipState(tx, clipId));
  if (state === 'arriving' || state === 'checking') return;
  await fileStore().removeAll(stemOf(clipKey(teamId, clipId)), state === 'ready' ? '.part' : '');
}
