import { AppError } from '#lib/errors.ts';
import { assertText, parseJson } from './parse-json.ts';
import { readCapped } from './read-capped.ts';

/** The body as JSON or form fields; refused before parsing when it is longer than `maxBytes`. */
export async function readBody(request: Request, maxBytes: number): Promise<unknown> {
  const type = request.headers.get('content-type')?.split(';')[0]?.trim().toLowerCase() ?? '';
  const text = decode(await readCapped(request, maxBytes));
  if (type === 'application/json') return parseJson(text);
  if (type === 'application/x-www-form-urlencoded') return formFields(text);
  throw new AppError('invalid', 'The body must be application/json or application/x-www-form-urlencoded.');
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
