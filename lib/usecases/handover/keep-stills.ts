import type { TeamPg } from '#lib/db/client.ts';
import { AppError } from '#lib/errors.ts';
import { fileStore } from '#lib/files/file-store.ts';
import { stillKey } from '#lib/files/still-key.ts';
import { stillPicture } from '#lib/files/still-picture.ts';
import type { ReadBag } from '#lib/handover/take-in/read-bag.ts';
import type { LeftOut, Row } from '#lib/handover/take-in/rows-to-keep.ts';

type Asked = { rows: readonly Row[]; oldIds: ReadonlyMap<string, string> };

/**
 * The pictures of a pack, decoded and written anew like any picture that comes in. A row whose picture is not in the pack
 * is left out. Files lie in the store before the transaction ends: one that ends badly leaves files that no row names.
 */
export async function keepStills(
  tx: TeamPg,
  { bag, keepsFiles }: { bag: ReadBag; keepsFiles: boolean },
  { rows, oldIds }: Asked,
): Promise<{ rows: Row[]; leftOut: LeftOut[] }> {
  const kept: Row[] = [];
  for (const row of rows) {
    const id = String(row.id);
    const bytes = bag.files.get(`stills/${oldIds.get(id) ?? ''}.jpg`);
    if (!bytes) continue;
    const { jpeg, width, height } = await decoded(bytes, oldIds.get(id) ?? '');
    const storageKey = stillKey(tx.teamId, id);
    if (keepsFiles) await fileStore().write(storageKey, jpeg);
    kept.push({ ...row, width, height, bytes: jpeg.byteLength, storage_key: storageKey });
  }
  const missing = rows.length - kept.length;
  const why = 'the picture is not in the pack';
  return { rows: kept, leftOut: missing > 0 ? [{ table: 'question_still', rows: missing, why }] : [] };
}

async function decoded(bytes: Buffer, id: string): ReturnType<typeof stillPicture> {
  try {
    return await stillPicture(bytes);
  } catch (error) {
    if (!(error instanceof AppError)) throw error;
    throw new AppError('invalid', `The picture data/stills/${id}.jpg of this pack: ${error.message}`, {
      fields: error.fields,
      cause: error,
    });
  }
}
