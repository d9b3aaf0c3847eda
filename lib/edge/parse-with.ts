import type { z } from 'zod';
import { AppError } from '#lib/errors.ts';

/** Parses with a schema; a refusal names every field and what to change. */
export function parseWith<Schema extends z.ZodType>(schema: Schema, value: unknown): z.output<Schema> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  const fields: Record<string, string> = {};
  for (const issue of parsed.error.issues) {
    const name =
      issue.code === 'unrecognized_keys'
        ? [...issue.path, issue.keys[0] ?? ''].join('.')
        : issue.path.join('.');
    fields[name || 'body'] ??=
      issue.code === 'unrecognized_keys' ? 'This field is not known. Leave it out.' : issue.message;
  }
  const [first = ['body', 'not as expected']] = Object.entries(fields);
  throw new AppError('invalid', `${first[0]}: ${first[1]}`, { fields });
}
