import { z } from 'zod';
import { findingRowSchema } from '#lib/schemas/finding-row.ts';

/** The JSON Schema 2020-12 of what check-history writes, made from the Zod schema. */
export function findingJsonSchema(): Record<string, unknown> {
  return {
    ...z.toJSONSchema(findingRowSchema, { target: 'draft-2020-12' }),
    $id: 'urn:plumbline:finding:1',
    title: 'Plumbline finding, as check-history writes it',
    description: 'One line of the JSON Lines, or one element of the array of --json.',
  };
}
