import type { Answer } from '../_parts/post-json.ts';
import { refusalOf } from '../_parts/post-json.ts';

/** Sends a pack as it is. `seen`: the sum of the one that was looked at, to keep it now. */
export async function sendPack(file: File, seen?: string): Promise<Answer> {
  try {
    const response = await fetch(`/api/clients/take-in${seen ? `?seen=${seen}` : ''}`, {
      method: 'POST',
      headers: { 'content-type': 'application/zip' },
      body: file,
    });
    const value: unknown = await response.json();
    return response.ok ? { ok: true, value } : refusalOf(value);
  } catch {
    return {
      ok: false,
      message: 'No connection, or the file changed on your disk. Nothing was taken in. Choose it again.',
      fields: {},
    };
  }
}
