import { AppError } from '#lib/errors.ts';

/** The bytes of a body; refused as soon as they are more than `maxBytes`. */
export async function readCapped(request: Request, maxBytes: number): Promise<Uint8Array> {
  const tooLarge = () =>
    new AppError(
      'too-large',
      `The body is longer than ${Math.floor(maxBytes / 1024)} KB. Send less at once.`,
    );
  if (Number(request.headers.get('content-length') ?? 0) > maxBytes) throw tooLarge();
  const chunks: Uint8Array[] = [];
  let length = 0;
  const reader = request.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.byteLength;
    if (length > maxBytes) {
      await reader.cancel();
      throw tooLarge();
    }
    chunks.push(value);
  }
  return Buffer.concat(chunks);
}
