import { z } from 'zod';
import { historySchema } from '#lib/schemas/history.ts';

/** The JSON Schema 2020-12 of history.json, made from the Zod schema. */
export function historyJsonSchema(): Record<string, unknown> {
  const made = z.toJSONSchema(historySchema, { target: 'draft-2020-12', io: 'input' });
  return {
    ...made,
    $id: 'urn:plumbline:history:1',
    title: 'Plumbline client history, format version 1',
    description:
      "One client's whole history. Dates are local (YYYY-MM-DD, in the client's own zone), instants are UTC. Amounts: seconds, repetitions, degrees or centimetres as the rung's measure says.",
  };
}
