import { AppError } from '#lib/errors.ts';
import { assertText, parseJson } from './parse-json.ts';

/** The body as JSON or form fields; refused before parsing when it is longer than `maxBytes`. */
export async function readBody(request: Request, maxBytes: number): Promise<unknown> {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() ?? '';
  const text = decode(await readCapped(request, maxBytes));
  if (type === 'application/json') return parseJson(text);
  if (type === 'application/x-www-form-urlencoded') return formFields(text);
  throw new AppError('invalid', 'The body must be application/json or application/x-www-form-urlencoded.');
}

async function readCapped(request: Request, maxBytes: number): Promise<Uint8Array> {
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

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new AppError('invalid', 'The body is not UTF-8 text.');
  }
}

/** Fields of a form; a name that comes several times (tick boxes) becomes a list. */
function formFields(text: string): Record<string, string | string[]> {
  const fields = new Map<string, string[]>();
  for (const [name, value] of new URLSearchParams(text)) {
    assertText(value);
    fields.set(name, [...(fields.get(name) ?? []), value]);
  }
  return Object.fromEntries(
    [...fields].map(([name, values]) => [name, values.length === 1 ? (values[0] ?? '') : values]),
  );
}
