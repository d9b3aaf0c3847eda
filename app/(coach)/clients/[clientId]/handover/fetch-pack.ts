import { z } from 'zod';
import type { Answer } from '../../_parts/post-json.ts';

const refusal = z.object({
  error: z.object({ message: z.string(), fields: z.record(z.string(), z.string()).default({}) }),
});

/** Asks for a pack and hands it to the browser's downloads; the value is its file name. */
export async function fetchPack(url: string, body: unknown): Promise<Answer> {
  try {
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
    if (!response.ok) {
      const { error } = refusal.parse(await response.json());
      return { ok: false, ...error };
    }
    const name =
      /filename="([^"]+)"/.exec(response.headers.get('content-disposition') ?? '')?.[1] ?? 'handover.zip';
    const address = URL.createObjectURL(await response.blob());
    const link = document.createElement('a');
    link.href = address;
    link.download = name;
    link.click();
    setTimeout(() => URL.revokeObjectURL(address), 60_000);
    return { ok: true, value: name };
  } catch {
    return {
      ok: false,
      message:
        'No connection, or the pack broke off. Nothing was made; what you typed is still here. Try again.',
      fields: {},
    };
  }
}
