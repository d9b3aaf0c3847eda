import { z } from 'zod';
import { CHECK_KINDS, LEVELS, TIERS } from '#lib/domain/vocabulary.ts';

/** One finding as `check-history` writes it: a line of JSON, or an element of the array of `--json`. */
export const findingRowSchema = z.strictObject({
  client: z.string().describe('client.id of the history'),
  date: z.iso.date().describe("The evening it was found on, in the client's own zone"),
  kind: z.enum(CHECK_KINDS).describe('The check that found it'),
  level: z.enum(LEVELS),
  tier: z.enum(TIERS).nullable().describe('How soon a coach should look; null: a note'),
  key: z.string().describe('What it is about, stable over evenings; of one client no two things share it'),
  subject: z.string().describe('The same in words; empty: the whole client. Two things may share it'),
  sentence: z.string().describe('One plain sentence with numbers and units'),
  evidence: z
    .record(z.string(), z.union([z.number(), z.string(), z.boolean(), z.null()]))
    .describe('The numbers behind the sentence, by name'),
});

export type FindingRow = z.infer<typeof findingRowSchema>;
