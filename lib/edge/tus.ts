import { AppError } from '#lib/errors.ts';

/** The open protocol for uploads that go on where they were cut: tus 1.0.0, https://tus.io/protocols/resumable-upload */
const VERSION = '1.0.0';
export const TUS_PATCH_TYPE = 'application/offset+octet-stream';

/** An answer of the protocol. */
export function tusResponse(status: number, headers: Record<string, string | number> = {}): Response {
  const all = new Headers({ 'tus-resumable': VERSION, 'cache-control': 'no-store' });
  for (const [name, value] of Object.entries(headers)) all.set(name, String(value));
  return new Response(null, { status, headers: all });
}

/** What to answer instead, where a request speaks no version that is spoken here. */
export function otherVersion(request: Request): Response | undefined {
  if (request.headers.get('tus-resumable') === VERSION) return undefined;
  return tusResponse(412, { 'tus-version': VERSION });
}

/** Names with base64 of their values, as `Upload-Metadata` holds them. */
export function readMetadata(header: string | null): Record<string, string> {
  const pairs = (header ?? '').split(',').map((pair) => pair.trim().split(' '));
  const read = pairs
    .filter(([name]) => name)
    .map(([name = '', value = '']) => [name, fromBase64(name, value)]);
  return Object.fromEntries(read);
}

function fromBase64(name: string, value: string): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.from(value, 'base64'));
  } catch (cause) {
    throw new AppError('invalid', `upload-metadata: ${name} is not text in base64`, {
      fields: { 'upload-metadata': 'is not text in base64' },
      cause,
    });
  }
}
